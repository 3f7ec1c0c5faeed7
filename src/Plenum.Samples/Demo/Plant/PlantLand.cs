namespace Plenum.Samples.Demo.Plant;

/// <summary>The plant, systems 05 to 11, in the form described at <see cref="PlantWater"/>.</summary>
internal static class PlantLand
{
    public const string Systems = """
        system 05 | Post-treatment | part | Makes drinking water of the permeate
        sub 05.1 | Remineralisation | part | 2026-09-07 | 2027-09-20 | Upflow limestone contactors with carbon dioxide | Hardness of 80 to 120 mg/l for 72 hours
        acc PRO | t.quill | 4.0 | | | |
        - Carbon dioxide plant | dosing | 68
        - Caustic dosing | dosing | 32
        acc MEC | a.brandt | 3.2 | | | |
        - Limestone contactors | filter | 70
        - Limestone silo | steel_tank | 30
        acc PIP | m.oduya | 1.3 | | | |
        - Contactor pipework | pipework | 100
        acc INS | n.castell | 1.2 | | | |
        - Hardness analysers | instrument | 100

        sub 05.2 | Disinfection | part | 2026-10-26 | 2027-10-18 | Chlorine contact and its dosing plant | Contact time of 30 minutes proven by tracer
        acc MEC | a.brandt | 2.8 | | | |
        - Disinfection skids | dosing | 58
        - Contact vessels | filter | 42
        acc PIP | d.finch | 1.2 | | | |
        - Disinfection pipework | pipework | 100

        sub 05.3 | Chemical storage | part | 2026-08-10 | 2027-04-19 | Bunded tanks for nine chemicals with one unloading bay | Bund holds 110 % of the largest tank, proven by water test
        acc PRO | t.quill | 5.2 | | | |
        - Bulk tanks | steel_tank | 60
        - Unloading pumps | pump | 28
        - Safety showers | dosing | 12
        acc CIV | g.holm | 0.5 | | | |
        - Bunded slab | foundation | 100

        sub 05.4 | Product-water tanks | part | 2026-09-21 | 2027-05-10 | Two covered concrete tanks for six hours of output | Water loss below 1 mm a day over seven days
        acc CIV | g.holm | 7.9 | 3.1 | 3.0 | -0.03 | 0.82
        - Tank east | concrete_tank | 44
        - Tank west | concrete_tank | 42
        - Valve chamber | concrete_tank | 14

        sub 05.5 | Product sampling station | part | 2026-11-16 | 2027-07-05 | House with taps from every tank and header | Sample of any point drawn within two minutes
        acc CIV | o.varga | 0.8 | | | |
        - Sampling house | building | 72
        - Drain basin | concrete_tank | 28

        system 06 | Product-water delivery | part | Brings the drinking water to the fence of the Harrow Hill reservoir
        sub 06.1 | Product pumping station | part | 2026-08-03 | 2027-07-19 | Four pumps and two surge vessels | Each pump runs 48 hours at 6.5 bar
        acc MEC | r.velde | 8.7 | 5.4 | 5.4 | 0.06 | 0.97
        - Product pumps | pump | 46
        - Pump motors | motor | 22
        - Surge vessels | steel_tank | 22
        - Overhead hoist | crane | 10
        acc PIP | d.finch | 2.3 | | | |
        - Station manifold | pipework | 62
        - Station valves | valves | 38
        acc INS | n.castell | 1.4 | | | |
        - Station instruments | instrument | 100
        loose ELE | 0.14
        - Station sockets and lighting | cables | 100

        sub 06.2 | Transfer main | place | 2026-07-20 | 2027-03-15 | Main of 1.2 m bore, 7.4 km, from the plant to Harrow Hill | Tested at 1.5 times the working pressure, disinfected, sampled clear
        acc PIP | d.finch | 17.7 | 10.7 | 10.5 | 0.13 |
        - Section 1, plant to ridge | buried_pipe | 32
        - Section 2, valley crossing | buried_pipe | 30
        - Section 3, ridge to Harrow Hill | buried_pipe | 26
        - Line valves | valves | 12

        sub 06.3 | Reservoir connection | part | 2026-10-05 | 2027-06-14 | Inlet chamber and tie-in at the reservoir fence | Tie-in made within one night, sampled clear
        acc CIV | o.varga | 2.5 | | | |
        - Inlet chamber | concrete_tank | 64
        - Tie-in pit | foundation | 36

        sub 06.4 | Metering chamber | part | 2026-11-02 | 2027-07-12 | Chamber for the meters on which the water is sold | Dry, ventilated, with room to lift out a meter
        acc CIV | o.varga | 1.8 | | | |
        - Chamber structure | concrete_tank | 70
        - Chamber roof and hatches | building | 30

        system 07 | Outfall | part | Returns brine and backwash water to the sea
        sub 07.1 | Brine collection | part | 2026-08-17 | 2027-04-12 | Channel, mixing chamber and drop shaft | No spill at 110 % of rated brine flow
        acc CIV | o.varga | 5.6 | 3.6 | 3.6 | -0.56 |
        - Brine channel | concrete_tank | 44
        - Mixing chamber | concrete_tank | 32
        - Drop shaft | foundation | 24

        sub 07.2 | Outfall pipelines | part | 2026-07-06 | 2027-04-19 | Two strings of 1.4 m bore, 1 140 m long, ballasted and trenched | Pressure held for 24 hours, cover proven by survey
        acc MAR | l.penhale | 14.0 | 10.0 | 9.4 | -1.02 |
        - North string | marine_pipe | 38
        - South string | marine_pipe | 38
        - Land crossing | marine_pipe | 20
        - Ballast blocks | marine_structure | 10

        sub 07.3 | Diffuser field | part | 2026-06-01 | 2027-03-01 | Forty-two nozzles on two manifolds | Salinity within 5 % of ambient at 100 m
        acc MAR | l.penhale | 8.0 | 5.2 | 5.0 | -0.96 |
        - Diffuser manifolds | marine_pipe | 44
        - Diffuser nozzles | marine_structure | 34
        - Scour mattress | marine_structure | 22

        sub 07.4 | Salinity measurement | part | 2026-11-30 | 2027-11-15 | Buoys that measure salinity and send it ashore | Data at the authority within one hour
        acc INS | n.castell | 3.0 | | | |
        - Salinity buoys | instrument | 70
        - Data link | network | 30

        sub 07.5 | Outfall marking and buoys | | | | Lights and buoys that keep vessels clear of the diffusers | Accepted by the harbour office

        system 08 | Electrical | function | Brings power from the line bay to every drive
        sub 08.1 | Grid connection | part | 2026-07-13 | 2027-06-07 | Two transformers of 132 to 33 kV with switchgear and line bay | Energised and loaded for 72 hours
        acc ELE | k.bellamy | 11.2 | 6.1 | 5.9 | -0.83 |
        - Grid transformers | transformer | 48
        - High-voltage switchgear | switchboard | 30
        - Line bay | switchboard | 14
        - Protection and metering | panel | 8

        sub 08.2 | Main substation | part | 2026-08-10 | 2027-07-05 | Main switchboard and transformers of 33 to 11 kV | Primary injection tests passed, transfer within two seconds
        acc ELE | s.rask | 8.0 | | | |
        - Main switchboard | switchboard | 46
        - Step-down transformers | transformer | 36
        - Busbar ducts | cables | 18
        acc CIV | g.holm | 2.3 | | | |
        - Substation foundations | foundation | 100

        sub 08.3 | Variable-speed drives | function | 2026-07-20 | 2027-08-02 | Drives for high-pressure, intake and product pumps, with filters | Harmonics at the line bay within the grid rules
        acc ELE | k.bellamy | 11.2 | 7.0 | 6.9 | -0.05 | 1.16
        - Drives for high-pressure pumps | drive | 50
        - Drives for intake pumps | drive | 20
        - Drives for product pumps | drive | 18
        - Harmonic filters | drive | 12

        sub 08.4 | Low-voltage distribution | part | 2026-09-28 | 2027-08-16 | Boards and motor control centres of all buildings | Each board passes its insulation test
        acc ELE | s.rask | 6.5 | | | |
        - Distribution boards | switchboard | 40
        - Motor control centres | switchboard | 40
        - Lighting and sockets | cables | 20

        sub 08.5 | Emergency power | part | 2026-11-09 | 2027-10-11 | Two generators and the battery systems | Black start within 60 seconds
        acc ELE | k.bellamy | 3.7 | | | |
        - Standby generators | generator | 68
        - Battery systems | panel | 32

        sub 08.6 | Cabling and earthing | part | 2026-10-19 | 2027-06-28 | Cables of all voltages, trays and the earthing grid | Earth resistance below 1 ohm, all cores tested
        acc ELE | k.bellamy | 5.6 | | | |
        - Power cables | cables | 50
        - Cable trays | cables | 30
        - Earthing grid | cables | 20

        system 09 | Control and instruments | function | Runs the plant, and lets people see what it does
        sub 09.1 | Process control system | part | 2026-07-20 | 2027-09-13 | Redundant controllers, operator stations and history | Every loop answers, change-over without a bump
        acc INS | n.castell | 9.8 | | | |
        - Controller cabinets | control_system | 36
        - Operator stations | control_system | 24
        - Programme controllers | control_system | 28
        - Other equipment | control_system | 12

        sub 09.2 | Field network | function | 2026-10-05 | 2027-09-06 | Buses and junction boxes from the cabinets to the field | Each node answers within 50 ms
        acc INS | p.drummond | 5.4 | | | |
        - Field buses | network | 64
        - Junction boxes | panel | 36

        sub 09.3 | Site and plant security | function | 2026-11-23 | 2027-10-04 | Fire detection, cameras and doors | Accepted by the fire officer
        acc INS | p.drummond | 5.1 | | | |
        - Fire detection | network | 58
        - Cameras and doors | network | 42

        sub 09.4 | Start-up and acceptance | function | 2027-01-11 | 2028-02-07 | What the plant as a whole is accepted on | Thirty days at 78 500 m³ a day within the energy limit
        acc INS | n.castell | 3.7 | | | |
        - Training simulator | control_system | 44
        - Plant test run | acceptance | 40
        - Operating manuals | acceptance | 16

        system 10 | Buildings and civil | place | Houses the plant
        sub 10.1 | RO hall | part | 2026-04-20 | 2026-11-23 | Steel hall of 124 by 46 m with a crane of 20 t | Dry, floor level within 5 mm, crane certified
        acc CIV | o.varga | 14.9 | 11.8 | 10.9 | -0.06 | 1.55
        - Foundations | foundation | 26
        - Steel frame | frame | 28
        - Floor and trenches | foundation | 20
        - Cladding and roof | building | 17
        - Building services | building | 9
        - Overhead crane | crane | 8

        sub 10.2 | Pre-treatment building | part | 2026-03-16 | 2027-01-11 | Hall for filters and ultrafiltration | Dry, floors accepted, ventilation balanced
        acc CIV | g.holm | 8.4 | 7.3 | 7.4 | 0.57 |
        - Foundations | foundation | 34
        - Frame and cladding | frame | 46
        - Building services | building | 20

        sub 10.3 | Chemical and electrical building | part | 2026-05-18 | 2026-12-07 | Two storeys, chemicals below, switch rooms above | Fire walls certified, ventilation balanced
        acc CIV | o.varga | 8.6 | | | |
        - Foundations | foundation | 34
        - Frame and walls | frame | 44
        - Building services | building | 22

        sub 10.4 | Administration and laboratory | part | 2026-03-30 | 2027-01-04 | Offices, control room and a water laboratory | Occupied, laboratory accredited
        acc CIV | g.holm | 6.5 | 5.6 | 5.4 | -1.16 |
        - Foundations | foundation | 28
        - Frame and walls | frame | 42
        - Interior and laboratory | building | 30

        sub 10.5 | Workshop and stores | part | 2026-08-24 | 2027-03-22 | Workshop, store and gatehouse | Handed over with shelving
        acc CIV | o.varga | 6.4 | | | |
        - Slab | foundation | 34
        - Frame and cladding | frame | 44
        - Interior | building | 22

        system 11 | Site services | place | Ground, roads and what the site itself needs
        sub 11.1 | Site preparation | part | 2026-03-02 | 2026-05-11 | Clearing, earthworks and the retaining wall | Levels within 50 mm
        acc SIT | h.pell | 6.4 | | | |
        - Site clearing | ground | 18
        - Bulk earthworks | ground | 54
        - Retaining wall | ground | 28

        sub 11.2 | Roads and paving | part | 2026-04-06 | 2026-10-05 | Access road, roads inside the fence, paving | Surface accepted by the road office
        acc SIT | h.pell | 4.5 | 4.5 | 4.3 | -0.59 |
        - Access road | road | 56
        - Internal roads and paving | road | 44

        sub 11.3 | Drainage and utilities | part | 2026-03-09 | 2026-07-20 | Storm and foul drains, water, ducts | All runs filmed, no standing water
        acc SIT | h.pell | 4.5 | 4.5 | 4.4 | -0.74 |
        - Storm drains | drain | 46
        - Foul drains | drain | 24
        - Water supply and ducts | drain | 30

        sub 11.4 | Temporary facilities | part | 2026-03-02 | 2026-05-04 | Site offices, stores and temporary power | In use by the works teams
        acc SIT | h.pell | 4.4 | | | |
        - Site offices and stores | temporary | 58
        - Temporary power and water | temporary | 42

        sub 11.5 | Landscape and fence | place | 2026-10-19 | 2027-06-21 | Fence, gates and planting | Fence closed, plants in growth
        acc SIT | h.pell | 2.0 | | | |
        - Fence and gates | fence | 62
        - Planting | planting | 38
        open Dune strip | 0.31
        """;
}
