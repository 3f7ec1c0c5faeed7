namespace Plenum.Samples.Demo.Plant;

/// <summary>Links between components; inside a component they follow from its work set.</summary>
internal static class LinkText
{
    /// <summary>from component | activity | to component | activity | type | lag in working days</summary>
    public const string Links = """
        11.1.01 | Earthworks | 11.1.02 | Earthworks | SS | 15
        11.1.02 | Construction | 11.2.01 | Construction | SS | 40
        10.1.01 | Construction | 10.1.02 | Construction | FS | 0
        10.1.02 | Construction | 10.1.03 | Earthworks | SS | 45
        10.1.02 | Construction | 10.1.03 | Construction | FS | 0
        10.1.02 | Construction | 10.1.04 | Construction | SS | 50
        10.1.04 | Construction | 10.1.05 | Construction | FS | 0
        10.1.02 | Construction | 10.1.06 | Erection | FS | 5
        10.2.01 | Construction | 10.2.02 | Construction | FS | 0
        10.2.02 | Construction | 10.2.03 | Construction | FS | 0
        10.3.01 | Construction | 10.3.02 | Construction | FS | 0
        10.3.02 | Construction | 10.3.03 | Construction | FS | 0
        10.4.01 | Construction | 10.4.02 | Construction | FS | 0
        10.4.02 | Construction | 10.4.03 | Construction | FS | 0
        10.5.01 | Construction | 10.5.02 | Construction | FS | 0
        10.5.02 | Construction | 10.5.03 | Construction | SS | 30
        01.1.03 | Installation | 01.1.01 | Installation | FS | 0
        01.1.01 | Installation | 01.1.02 | Installation | FS | 5
        01.1.01 | Installation | 01.2.04 | Installation | FS | 0
        01.2.01 | Installation | 01.2.02 | Installation | SS | 20
        01.2.02 | Installation | 01.2.03 | Installation | SS | 20
        07.2.01 | Installation | 07.2.02 | Installation | SS | 30
        07.2.02 | Installation | 07.3.01 | Installation | FS | 0
        07.3.01 | Installation | 07.3.02 | Installation | SS | 15
        06.2.01 | Erection | 06.2.02 | Erection | SS | 25
        06.2.02 | Erection | 06.2.03 | Erection | SS | 25
        06.2.03 | Connection | 06.3.02 | Finishing | FF | 10
        08.1.01 | Erection | 08.1.04 | Connection | FS | 0
        08.1.02 | Commissioning | 08.2.01 | Commissioning | FS | 0
        08.2.01 | Commissioning | 08.3.01 | Commissioning | FS | 0
        08.2.01 | Commissioning | 08.4.02 | Commissioning | SS | 5
        08.6.01 | Erection | 08.3.01 | Connection | FF | 12
        08.6.01 | Erection | 08.4.02 | Connection | SS | 20
        08.6.02 | Erection | 08.6.01 | Erection | SS | 20
        09.1.01 | Installation | 09.2.01 | Loop checks | FS | 0
        09.1.01 | Loop checks | 03.9.02 | Commissioning | FS | 0
        08.3.01 | Commissioning | 03.1.04 | Commissioning | FS | 0
        10.1.03 | Construction | 03.1.01 | Erection | FS | 0
        10.1.03 | Construction | 04.1.03 | Erection | FS | 10
        10.1.03 | Construction | 03.7.01 | Erection | FS | 15
        10.1.03 | Construction | 03.9.01 | Civil works | SS | 10
        10.1.06 | Commissioning | 03.1.04 | Erection | FS | 0
        10.2.02 | Construction | 02.3.01 | Erection | FS | 0
        10.2.02 | Construction | 02.4.01 | Erection | FS | 0
        10.3.02 | Construction | 08.3.01 | Erection | FS | 0
        10.3.02 | Construction | 08.4.01 | Erection | FS | 0
        10.3.02 | Construction | 09.1.01 | Installation | FS | 0
        03.1.10 | Pre-commissioning | 03.9.02 | Commissioning | FS | 0
        03.9.02 | Commissioning | 03.1.04 | Commissioning | FS | 0
        02.4.01 | Commissioning | 03.9.02 | Commissioning | FS | 0
        01.3.01 | Commissioning | 02.4.01 | Commissioning | SS | 5
        04.1.01 | Connection | 03.1.06 | Connection | FF | 5
        04.2.01 | Connection | 03.3.06 | Connection | FF | 5
        04.3.01 | Connection | 03.5.06 | Connection | FF | 5
        05.1.03 | Commissioning | 09.4.02 | Preparation | FF | 0
        06.1.01 | Commissioning | 09.4.02 | Preparation | FF | 0
        07.3.01 | Commissioning | 03.1.04 | Commissioning | FS | 0
        09.4.03 | Procedure | 09.4.02 | Preparation | SF | 20
        """;

    /// <summary>The trains, in the order in which they are erected and started.</summary>
    public static readonly string[] Trains = ["03.1", "03.2", "03.3", "03.4", "03.5", "03.6"];

    /// <summary>Inside a train, its components by number: from | activity | to | activity | type | lag.</summary>
    public const string InTrain = """
        01 | Erection | 02 | Erection | SS | 15
        02 | Erection | 03 | Erection | FS | 0
        01 | Erection | 06 | Erection | FS | 0
        01 | Erection | 04 | Erection | SS | 20
        04 | Erection | 05 | Erection | SS | 10
        06 | Erection | 07 | Erection | SS | 12
        06 | Erection | 08 | Erection | SS | 10
        06 | Erection | 09 | Erection | SS | 10
        06 | Connection | 10 | Pre-commissioning | FS | 0
        03 | Connection | 04 | Commissioning | FS | 0
        04 | Commissioning | 01 | Commissioning | SS | 2
        04 | Commissioning | 06 | Commissioning | SS | 4
        """;

    /// <summary>From a train to the next: component | activity | type | lag.</summary>
    public const string NextTrain = """
        01 | Erection | SS | 12
        06 | Erection | SS | 14
        04 | Commissioning | SS | 8
        """;
}
