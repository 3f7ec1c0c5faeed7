namespace Plenum.Samples.Demo.Plant;

/// <summary>
/// The plant, systems 01 to 04, written down as plain tables:
/// <code>
/// system  code | name | split | description
/// sub     code | name | split | design starts | site opens | what it is | done when
/// acc     unit | manager | budget | planned | earned | cost variance | offset     (million, the last four may be empty)
/// -       component | part type | weight
/// loose   unit | budget                  (its components stand in no account)
/// open    component | allotted           (not broken down)
/// </code>
/// </summary>
internal static class PlantWater
{
    private const string TrainMechanical = """
        - Membrane racks | membrane_rack | 96
        - Pressure vessels | pressure_vessel | 112
        - Membrane elements | membrane | 194
        - High-pressure pump | pump | 132
        - Pump motor and drive | motor | 104
        """;

    private const string TrainPiping = """
        - High-pressure pipework | pipework | 108
        - Permeate pipework | pipework | 51
        - Brine pipework | pipework | 53
        - Valves | valves | 57
        """;

    private const string TrainInstruments = """
        - Train instruments | instrument | 70
        - Sampling panel | panel | 23
        """;

    public const string Systems = $"""
        system 01 | Intake | part | Takes seawater from the bay and brings it to pre-treatment
        sub 01.1 | Offshore intake structure | part | 2026-03-02 | 2026-11-02 | Precast tower on a caisson, 620 m offshore, with a velocity cap at 9 m depth | Inflow below 0.15 m/s at every opening, survey handed over
        acc MAR | e.sorley | 13.1 | 11.1 | 9.1 | 0.01 | 1.40
        - Intake tower | marine_structure | 42
        - Velocity cap and bar racks | marine_structure | 18
        - Caisson foundation | marine_structure | 32
        - Air burst line | marine_pipe | 8

        sub 01.2 | Intake pipelines | place | 2026-06-15 | 2027-01-11 | Twin pipelines of 1.8 m bore from the tower to the pumping station | Pressure held for 24 hours, no joint leaks, as-built survey
        acc MAR | l.penhale | 14.9 | 12.0 | 11.2 | 0.16 |
        - Shore crossing | marine_pipe | 30
        - Inner section | marine_pipe | 26
        - Outer section | marine_pipe | 28
        - Tower connection | marine_pipe | 16

        sub 01.3 | Intake pumping station | part | 2026-06-15 | 2027-02-22 | Five pumps in a pit of 14 m depth behind band screens | Each pump runs 48 hours at its rated point
        acc MEC | r.velde | 7.9 | | | |
        - Intake pumps | pump | 46
        - Pump motors | motor | 24
        - Band screens | screen | 30
        acc PIP | d.finch | 2.2 | | | |
        - Discharge manifold | pipework | 64
        - Station valves | valves | 36
        acc CIV | g.holm | 5.8 | 4.5 | 4.4 | -1.26 |
        - Pump pit and channels | foundation | 58
        - Screen chamber | concrete_tank | 24
        - Superstructure | building | 18

        sub 01.4 | Shock chlorination | part | 2026-09-21 | 2027-09-06 | Hypochlorite made on site and dosed at the tower | Residual chlorine of 0.5 mg/l at the screens
        acc PRO | t.quill | 2.7 | | | |
        - Hypochlorite generators | dosing | 60
        - Hypochlorite tanks | steel_tank | 24
        - Dosing pumps | pump | 16
        acc PIP | d.finch | 1.0 | | | |
        - Dosing lines | pipework | 100

        sub 01.5 | Seawater transfer main | part | 2026-07-13 | 2027-04-12 | Buried main of 1.6 m bore, 840 m, from the station to pre-treatment | Tested at 1.5 times the working pressure
        acc PIP | m.oduya | 6.5 | 4.6 | 4.1 | -0.61 |
        - Transfer pipeline | buried_pipe | 66
        - Air valves and chambers | valves | 14
        - Surge vessels | steel_tank | 20

        system 02 | Pre-treatment | part | Takes solids and organics out of the seawater so that the membranes last
        sub 02.1 | Coagulation and dosing | part | 2026-08-17 | 2027-09-06 | Coagulant, polymer and acid, stored, mixed and dosed in proportion to flow | Dose within 3 % of the set value over the whole range
        acc PRO | t.quill | 4.6 | | | |
        - Coagulant dosing | dosing | 42
        - Polymer preparation | dosing | 30
        - Acid dosing | dosing | 28

        sub 02.2 | Flocculation and flotation | part | 2026-07-20 | 2027-03-01 | Four lines of flocculators and flotation basins | Turbidity below 2 NTU behind the basins for 72 hours
        acc MEC | r.velde | 5.6 | | | |
        - Flocculators | filter | 38
        - Flotation saturators | steel_tank | 34
        - Recycle pumps | pump | 28
        acc PIP | d.finch | 1.6 | | | |
        - Recycle pipework | pipework | 100
        acc CIV | g.holm | 3.4 | | | |
        - Flotation basins | concrete_tank | 100

        sub 02.3 | Dual-media filters | part | 2026-06-23 | 2027-03-15 | Twenty-four pressure filters with anthracite over sand | Silt density index below 4 for 72 hours
        acc MEC | j.harrow | 6.9 | 4.9 | 4.3 | -0.62 |
        - Filter vessels | filter | 62
        - Air-scour blowers | pump | 18
        - Filter media | membrane | 20
        acc PIP | m.oduya | 2.4 | | | |
        - Filter pipework | pipework | 62
        - Filter valves | valves | 38
        acc CIV | g.holm | 4.3 | | | |
        - Filter gallery | foundation | 100

        sub 02.4 | Ultrafiltration | part | 2026-08-03 | 2027-05-17 | Sixteen racks of hollow-fibre modules behind the dual-media filters | Every rack passes its integrity test, silt density index below 2.5
        acc MEC | a.brandt | 11.4 | 6.6 | 6.2 | 0.02 | 1.22
        - Ultrafiltration racks | membrane_rack | 30
        - Ultrafiltration modules | membrane | 38
        - Feed pumps | pump | 18
        - Backwash pumps | pump | 14
        acc PIP | m.oduya | 3.6 | | | |
        - Ultrafiltration pipework | pipework | 66
        - Ultrafiltration valves | valves | 34
        acc INS | n.castell | 1.6 | | | |
        - Ultrafiltration instruments | instrument | 68
        - Integrity test panel | panel | 32
        acc CIV | g.holm | 4.1 | | | |
        - Rack foundations and pit | foundation | 100

        sub 02.5 | Cartridge filters | part | 2026-10-05 | 2027-10-04 | Ten horizontal housings of 5 micrometre cartridges | Pressure loss below 0.3 bar at rated flow
        acc MEC | r.velde | 2.9 | | | |
        - Cartridge housings | filter | 74
        - Cartridges | membrane | 26
        acc PIP | d.finch | 1.5 | | | |
        - Cartridge pipework | pipework | 58
        - Cartridge valves | valves | 42

        sub 02.6 | Backwash and sludge handling | part | 2026-11-23 | 2027-06-07 | Collects backwash water, thickens the sludge and presses it | Return water below 20 mg/l suspended solids
        acc PIP | m.oduya | 1.2 | | | |
        - Backwash return line | buried_pipe | 100
        acc CIV | g.holm | 3.5 | | | |
        - Backwash basin | concrete_tank | 56
        - Backwash basin | concrete_tank | 44

        system 03 | Reverse osmosis | part | Separates the filtered seawater into permeate and brine
        sub 03.1 | RO train A | part | 2026-07-20 | 2027-06-28 | One first-pass train of 13 300 m³/d: racks, vessels, membranes, high-pressure pump with drive, piping, instruments | 72-hour run at 98 % of rated flow, permeate below 350 mg/l, punch list without category A
        acc MEC | j.harrow | 9.1 | 4.4 | 3.9 | -0.58 |
        {TrainMechanical}
        acc PIP | d.finch | 4.0 | | | |
        {TrainPiping}
        acc INS | p.drummond | 1.1 | | | |
        {TrainInstruments}

        sub 03.2 | RO train B | part | 2026-07-27 | 2027-07-19 | One first-pass train of 13 300 m³/d, as train A | 72-hour run at 98 % of rated flow, permeate below 350 mg/l, punch list without category A
        acc MEC | r.velde | 8.9 | 4.9 | 4.2 | -0.02 | 0.93
        {TrainMechanical}
        acc PIP | d.finch | 4.3 | | | |
        {TrainPiping}
        acc INS | n.castell | 0.9 | | | |
        {TrainInstruments}

        sub 03.3 | RO train C | part | 2026-08-11 | 2027-08-09 | One first-pass train of 13 300 m³/d, as train A | 72-hour run at 98 % of rated flow, permeate below 350 mg/l, punch list without category A
        acc MEC | r.velde | 8.9 | | | |
        {TrainMechanical}
        acc PIP | m.oduya | 4.1 | | | |
        {TrainPiping}
        acc INS | p.drummond | 1.2 | | | |
        {TrainInstruments}

        sub 03.4 | RO train D | part | 2026-08-24 | 2027-08-30 | One first-pass train of 13 300 m³/d: racks, vessels, membranes, high-pressure pump with drive, piping | 72-hour run at 98 % of rated flow, permeate below 350 mg/l, punch list without category A
        acc MEC | r.velde | 9.1 | | | |
        {TrainMechanical}
        acc PIP | d.finch | 4.0 | | | |
        {TrainPiping}
        acc INS | p.drummond | 0.2 | | | |
        - Sampling panel | panel | 23

        sub 03.5 | RO train E | part | 2026-09-07 | 2027-09-20 | One first-pass train of 13 300 m³/d, as train A | 72-hour run at 98 % of rated flow, permeate below 350 mg/l, punch list without category A
        acc MEC | r.velde | 9.3 | | | |
        {TrainMechanical}
        acc PIP | m.oduya | 3.8 | | | |
        {TrainPiping}
        acc INS | n.castell | 1.0 | | | |
        {TrainInstruments}

        sub 03.6 | RO train F | part | 2026-09-21 | 2027-10-11 | One first-pass train of 13 300 m³/d, as train A | 72-hour run at 98 % of rated flow, permeate below 350 mg/l, punch list without category A
        acc MEC | j.harrow | 9.2 | | | |
        {TrainMechanical}
        acc PIP | d.finch | 3.9 | | | |
        {TrainPiping}
        acc INS | p.drummond | 1.0 | | | |
        {TrainInstruments}

        sub 03.7 | Second pass | part | 2026-08-17 | 2027-11-01 | Two racks that polish a third of the permeate for boron | Boron below 1.0 mg/l at 32 °C sea water
        acc MEC | r.velde | 9.8 | | | |
        - Second-pass racks | membrane_rack | 34
        - Second-pass elements | membrane | 40
        - Second-pass pumps | pump | 26
        acc PIP | d.finch | 2.3 | | | |
        - Second-pass pipework | pipework | 100
        acc INS | p.drummond | 1.0 | | | |
        - Second-pass instruments | instrument | 100

        sub 03.8 | Cleaning in place | part | 2026-10-19 | 2027-11-01 | Tanks, heater and pumps that clean one rack at a time | One rack cleaned and back at its first permeability
        acc MEC | r.velde | 3.8 | | | |
        - Cleaning tanks | steel_tank | 44
        - Cleaning pumps | pump | 30
        - Cleaning filters | filter | 26
        acc PIP | d.finch | 1.8 | | | |
        - Cleaning pipework | pipework | 100

        sub 03.9 | Flushing and permeate headers | part | 2026-08-31 | 2027-11-15 | Headers along the hall, and the tank that flushes a stopped train | Any train flushed within 12 minutes of a stop
        acc MEC | a.brandt | 1.1 | | | |
        - Flushing tank and pumps | pump | 100
        acc PIP | m.oduya | 5.5 | | | |
        - Permeate headers | pipework | 48
        - Flushing headers | pipework | 30
        - Header valves | valves | 22

        system 04 | Energy recovery | part | Gives the pressure of the brine back to the feed
        sub 04.1 | Exchanger rack 1 | part | 2026-07-27 | 2027-10-04 | Sixteen rotary exchangers for trains A and B | Efficiency of 96 % or more at rated flow
        acc MEC | a.brandt | 7.2 | | | |
        - Pressure exchangers | exchanger | 58
        - Circulation pump | pump | 26
        - Rack frame | membrane_rack | 16
        acc PIP | d.finch | 1.5 | | | |
        - Rack pipework | pipework | 100

        sub 04.2 | Exchanger rack 2 | part | 2026-08-31 | 2027-11-01 | Sixteen rotary exchangers for trains C and D | Efficiency of 96 % or more at rated flow
        acc MEC | a.brandt | 7.0 | | | |
        - Pressure exchangers | exchanger | 58
        - Circulation pump | pump | 26
        - Rack frame | membrane_rack | 16
        acc PIP | d.finch | 1.5 | | | |
        - Rack pipework | pipework | 100

        sub 04.3 | Exchanger rack 3 | part | 2026-09-28 | 2027-11-29 | Sixteen rotary exchangers for trains E and F | Efficiency of 96 % or more at rated flow
        acc MEC | r.velde | 7.1 | | | |
        - Pressure exchangers | exchanger | 58
        - Circulation pump | pump | 26
        - Rack frame | membrane_rack | 16
        acc PIP | m.oduya | 1.6 | | | |
        - Rack pipework | pipework | 100

        sub 04.4 | Brine let-down and monitoring | function | 2026-11-02 | 2027-12-06 | Let-down valves and the instruments that watch leakage in the exchangers | Leakage shown within 0.2 % of the true value
        acc MEC | a.brandt | 3.4 | | | |
        - Let-down valves | valves | 100
        acc INS | n.castell | 0.9 | | | |
        - Exchanger instruments | instrument | 66
        - Leakage panel | panel | 34
        """;
}
