namespace Plenum.Samples.Demo.Plant;

/// <summary>What the WBS dictionary says of each kind of work.</summary>
internal static class DictionaryText
{
    /// <summary>activity | output | accepted when</summary>
    public const string Steps = """
        Design | Approved drawings and data sheets | Released by the engineer in charge without open comments
        Specification | Specification for inquiry | Checked against the scope statement and signed
        Purchase | Order placed | Order confirmed with price, date and guarantees
        Manufacture | Parts ready for test at the works | Dimensions and materials certified
        Fabrication | Sections ready for transport | Dimensions, welds and coating certified
        Factory test | Signed test record | Every point of the test plan passed
        Delivery | Parts on site, unpacked and checked | Receipt signed, no damage recorded
        Civil works | Plinths and trenches ready | Levels within 5 mm, anchor bolts in place
        Erection | Parts set, aligned and fixed | Alignment and torque records signed
        Connection | Parts connected and tight | Tightness test passed
        Pre-commissioning | Parts checked without load | Check lists complete
        Commissioning | Parts running at their set values | Records of the run signed
        Hand-over | Records handed over | Accepted without items of category A
        Permit | Permit in hand | Permit issued without conditions that stop work
        Tender | Works order placed | Order confirmed with rates and programme
        Earthworks | Ground at level, ready for work | Levels and compaction recorded
        Construction | Structure complete | Strength and dimensions recorded
        Finishing | Surfaces and fittings complete | Punch list without items of category A
        Inspection | Signed inspection record | Every point of the inspection plan passed
        Survey | Survey with levels and soundings | Accepted by the engineer in charge
        Dredging | Trench at level | Sounding within 200 mm of the design
        Installation | Parts in place and fixed | Position and fixing recorded
        Protection | Cover and rock in place | Survey of cover accepted
        Software | Software ready for factory test | Every function shown on the simulator
        Loop checks | Loops proven from field to screen | Loop sheets signed
        Procedure | Approved procedure | Approved by the owner
        Preparation | Plant and staff ready for the run | Check list complete
        Run | Record of the run | Output, quality and energy within the limits
        Report | Report of the run | Approved by the owner
        Site supervision | Daily records of the work on site | Records complete
        Inspection of making | Inspection records of the works | Every hold point signed
        """;

    /// <summary>family | included | excluded | accepted when</summary>
    public const string Families = """
        equipment | Supply, transport, erection and start-up with first fills | Supply cables and foundations outside the part | Runs at its rated point, records handed over
        piping | Supply, prefabrication, supports, erection and pressure test | Insulation of personnel protection | Pressure test passed, records handed over
        control | Hardware, software, field work and loop checks | Field instruments of other parts | All functions shown, records handed over
        civil | Earthworks, structure and finishing | Furniture and plant | Inspection passed, as-built drawings handed over
        marine | Fabrication, sea transport, placing and protection | Owner's surveys before award | Survey accepted, as-built drawings handed over
        site | Earthworks, construction and restoring of the surface | Works outside the licensed corridor | Inspection passed, as-built drawings handed over
        acceptance | Staff, records and measurement for the tests | Power and chemicals, which the owner gives | Accepted by the owner
        """;

    public const string Assumption = "Order of the work as in the baseline; access given on time.";
}
