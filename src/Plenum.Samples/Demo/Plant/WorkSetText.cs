namespace Plenum.Samples.Demo.Plant;

/// <summary>What any part of a kind needs done, and the kinds of part of the plant.</summary>
internal static class WorkSetText
{
    /// <summary>
    /// Per family: activity | facet | share of cost in per mille | working days | technique | how it is paid for |
    /// after | hazards.
    /// </summary>
    public const string Families = """
        family equipment
        Design | engineering | 70 | 46 | items | office | |
        Specification | engineering | 20 | 16 | 50/50 | office | Design |
        Purchase | procurement | 14 | 26 | 0/100 | office | Specification |
        Manufacture | procurement | 458 | 130 | milestones | shop | Purchase |
        Factory test | procurement | 18 | 6 | 0/100 | witness | Manufacture | pressure
        Delivery | procurement | 32 | 18 | 25/75 | freight | Factory test | lifting
        Civil works | construction | 74 | 48 | units | contract | Design | excavation
        Erection | construction | 176 | 44 | units | crew | Delivery;Civil works | lifting;work at height
        Connection | construction | 68 | 24 | percent | crew | Erection | hot work
        Pre-commissioning | commissioning | 26 | 14 | 50/50 | start | Connection | pressure;energising
        Commissioning | commissioning | 36 | 20 | percent | start | Pre-commissioning | energising;chemicals
        Hand-over | close | 8 | 5 | 0/100 | office | Commissioning |

        family piping
        Design | engineering | 92 | 52 | items | office | |
        Specification | engineering | 20 | 16 | 50/50 | office | Design |
        Purchase | procurement | 14 | 26 | 0/100 | office | Specification |
        Manufacture | procurement | 336 | 110 | units | shop | Purchase | hot work
        Factory test | procurement | 12 | 6 | 0/100 | witness | Manufacture | pressure
        Delivery | procurement | 26 | 16 | 25/75 | freight | Factory test | lifting
        Civil works | construction | 50 | 40 | percent | contract | Design | excavation
        Erection | construction | 286 | 62 | items | crew | Delivery;Civil works | lifting;work at height;hot work
        Connection | construction | 96 | 30 | items | crew | Erection | hot work;pressure
        Pre-commissioning | commissioning | 30 | 14 | 50/50 | start | Connection | pressure
        Commissioning | commissioning | 30 | 18 | percent | start | Pre-commissioning | pressure
        Hand-over | close | 8 | 5 | 0/100 | office | Commissioning |

        family control
        Design | engineering | 130 | 60 | items | office | |
        Specification | engineering | 40 | 22 | 50/50 | office | Design |
        Purchase | procurement | 16 | 26 | 0/100 | office | Specification |
        Software | engineering | 240 | 150 | percent | office | Specification |
        Manufacture | procurement | 230 | 96 | milestones | shop | Purchase |
        Factory test | procurement | 44 | 12 | 0/100 | witness | Manufacture;Software | energising
        Delivery | procurement | 18 | 10 | 25/75 | freight | Factory test | lifting
        Installation | construction | 140 | 46 | units | crew | Delivery | work at height
        Loop checks | commissioning | 72 | 26 | items | start | Installation | energising
        Commissioning | commissioning | 60 | 24 | percent | start | Loop checks | energising
        Hand-over | close | 10 | 5 | 0/100 | office | Commissioning |

        family civil
        Design | engineering | 78 | 60 | items | office | |
        Permit | engineering | 14 | 20 | 0/100 | office | Design |
        Tender | procurement | 16 | 28 | 20/80 | office | Design |
        Earthworks | construction | 160 | 28 | units | contract | Permit;Tender | excavation
        Construction | construction | 462 | 62 | units | contract | Earthworks | lifting;work at height
        Finishing | construction | 232 | 46 | percent | contract | Construction | work at height
        Inspection | commissioning | 28 | 12 | 50/50 | start | Finishing | confined space
        Hand-over | close | 10 | 5 | 0/100 | office | Inspection |

        family marine
        Design | engineering | 62 | 60 | items | office | |
        Survey | engineering | 30 | 24 | 50/50 | witness | | diving
        Purchase | procurement | 18 | 28 | 20/80 | office | Design;Survey |
        Fabrication | procurement | 336 | 120 | milestones | shop | Purchase | hot work
        Dredging | construction | 160 | 50 | units | contract | Design;Survey | excavation;diving
        Installation | construction | 282 | 60 | units | contract | Fabrication;Dredging | diving;lifting
        Protection | construction | 74 | 30 | percent | contract | Installation | diving;lifting
        Commissioning | commissioning | 28 | 16 | percent | start | Protection | diving;pressure
        Hand-over | close | 10 | 5 | 0/100 | office | Commissioning |

        family site
        Design | engineering | 66 | 30 | percent | office | |
        Permit | engineering | 12 | 18 | 0/100 | office | Design |
        Tender | procurement | 18 | 18 | 20/80 | office | Design |
        Earthworks | construction | 300 | 30 | units | contract | Permit;Tender | excavation
        Construction | construction | 554 | 56 | units | contract | Earthworks | lifting
        Inspection | commissioning | 38 | 10 | 50/50 | start | Construction |
        Hand-over | close | 12 | 5 | 0/100 | office | Inspection |

        family acceptance
        Procedure | engineering | 260 | 40 | percent | office | |
        Preparation | commissioning | 180 | 30 | 50/50 | start | Procedure | energising
        Run | commissioning | 420 | 51 | percent | start | Preparation | pressure;energising;chemicals
        Report | commissioning | 100 | 12 | 50/50 | office | Run |
        Hand-over | close | 40 | 6 | 0/100 | office | Report |
        """;

    /// <summary>
    /// part type | family | name | unit it is counted in | usual quantity | weighted milestones of making it |
    /// activities that this kind does not need, with the reason.
    /// </summary>
    public const string PartTypes = """
        membrane_rack | equipment | Membrane rack | bolted frames | 40 | steel 25, frames 35, coating 25, trial fit 15 | Factory test = fit-up only
        pressure_vessel | equipment | Pressure vessel | vessels | 180 | tubes 40, ports 25, burst test 20, finish 15 | Civil works = on racks; Connection = with racks
        membrane | equipment | Membrane element | elements | 1260 | sheet 30, rolling 40, flow test 20, packing 10 | Design = catalogue; Civil works = in vessels; Connection = in vessels; Pre-commissioning = loaded later
        pump | equipment | Pump | pumps | 3 | casing 30, rotor 25, seals 15, test fit 20, paint 10 |
        motor | equipment | Motor | motors | 3 | stator 35, rotor 25, winding 25, assembly 15 | Civil works = with pump
        filter | equipment | Filter | vessels | 12 | plate 30, shell 35, internals 20, lining 15 |
        screen | equipment | Screen | screens | 4 | frame 35, panels 35, drive 20, trial run 10 |
        steel_tank | equipment | Steel tank | tanks | 2 | plate 30, shell 40, nozzles 20, test 10 |
        dosing | equipment | Dosing plant | skids | 4 | frame 25, pipework 35, pumps 25, wiring 15 |
        exchanger | equipment | Pressure exchanger | exchangers | 16 | ceramics 45, housings 30, assembly 15, flow test 10 |
        crane | equipment | Crane | cranes | 1 | girders 40, crab 35, wiring 15, load test 10 |
        instrument | equipment | Instrument set | instruments | 64 | sensors 50, calibration 35, tags 15 | Civil works = in line
        panel | equipment | Panel | panels | 4 | enclosure 30, wiring 50, marking 20 | Civil works = on wall
        transformer | equipment | Transformer | transformers | 2 | core 30, windings 35, tank 20, drying 15 |
        switchboard | equipment | Switchboard | sections | 18 | frames 30, busbars 30, breakers 25, wiring 15 |
        drive | equipment | Variable-speed drive | drives | 6 | cubicles 30, power cells 40, cooling 15, wiring 15 |
        generator | equipment | Generator | sets | 2 | engine 40, alternator 30, canopy 15, wiring 15 |
        pipework | piping | Pipework | spools | 160 | cutting 20, welding 50, lining 30 | Factory test = weld tests; Civil works = on pipe rack
        buried_pipe | piping | Buried pipeline | pipe lengths | 420 | pipe 60, lining 25, coating 15 | Factory test = site test
        valves | piping | Valve set | valves | 90 | castings 40, machining 35, actuators 25 | Design = catalogue; Civil works = in line
        cables | piping | Cable set | cable lengths | 300 | drums 60, cutting 25, marking 15 | Factory test = drum certificates; Civil works = on trays
        control_system | control | Control system | cabinets | 16 | cabinets 35, wiring 40, modules 25 |
        network | control | Data network | nodes | 24 | cabinets 35, optics 35, modules 30 |
        foundation | civil | Foundation | cubic metres | 2400 | formwork 30, steel 30, concrete 40 |
        frame | civil | Building frame | tonnes | 380 | columns 40, beams 40, bracing 20 | Earthworks = on foundations
        building | civil | Building work | square metres | 3200 | walls 40, roof 40, services 20 |
        concrete_tank | civil | Concrete tank | cubic metres | 3600 | base 30, walls 50, roof 20 |
        marine_structure | marine | Marine structure | segments | 14 | moulds 20, steel 30, casting 40, curing 10 |
        marine_pipe | marine | Marine pipeline | strings | 22 | pipe 45, welding 40, weights 15 |
        road | site | Road | square metres | 18000 | base 50, surface 50 |
        drain | site | Drain and duct | metres | 2600 | pipe 70, manholes 30 |
        ground | site | Ground works | cubic metres | 42000 | cut 60, fill 40 |
        fence | site | Fence | metres | 1900 | posts 50, panels 50 | Earthworks = post holes only
        planting | site | Planting | square metres | 6400 | soil 40, plants 60 | Permit = none required
        temporary | site | Temporary works | units | 36 | units 70, services 30 | Earthworks = on prepared ground
        acceptance | acceptance | Acceptance | tests | 14 | |
        """;
}
