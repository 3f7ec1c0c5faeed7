namespace Plenum.Samples.Demo.Plant;

/// <summary>What the breaking down has shown: risks, opportunities, constraints and interfaces.</summary>
internal static class RegisterText
{
    /// <summary>element | text | owner | low | likely | high (thousand) | days low | likely | high</summary>
    public const string Risks = """
        01.1.01 | Swell above 1.5 m stops the sinking of the tower | e.sorley | 120 | 420 | 1300 | 5 | 18 | 45
        01.2.02 | Boulders in the trench that the survey did not show | l.penhale | 80 | 360 | 1100 | 4 | 14 | 35
        01.3.06 | Ground water enters the pump pit faster than pumped | g.holm | 60 | 250 | 900 | 3 | 12 | 30
        01.5.01 | Main crosses a cable that is not on the drawings | m.oduya | 20 | 90 | 260 | 2 | 6 | 15
        02.4.02 | Modules fail the integrity test at the works | a.brandt | 50 | 180 | 600 | 5 | 15 | 40
        03.1.06 | High-pressure welds need more repair than allowed for | d.finch | 40 | 150 | 480 | 4 | 12 | 28
        03.2.03 | Pallets of elements fail the conductivity test | r.velde | 30 | 110 | 350 | 3 | 10 | 25
        03.2.04 | Pump leaves the works without a test of its own | r.velde | 0 | 90 | 420 | 0 | 8 | 30
        03.7.02 | Boron rejection of the second pass below the guarantee | r.velde | 100 | 380 | 1200 | 10 | 25 | 60
        04.1.01 | Ceramics of the exchangers arrive late | a.brandt | 0 | 60 | 220 | 5 | 15 | 40
        05.4.02 | Concrete of the west tank cracks in the summer heat | g.holm | 30 | 120 | 420 | 5 | 12 | 30
        06.2.02 | Valley crossing floods in autumn | d.finch | 50 | 210 | 700 | 4 | 15 | 40
        07.2.01 | Weather window for the north string is missed | l.penhale | 200 | 700 | 2100 | 10 | 30 | 75
        07.3.01 | Diffuser field lies in a current stronger than assumed | l.penhale | 80 | 260 | 800 | 3 | 10 | 25
        08.1.01 | Transformer fails its heat run | k.bellamy | 100 | 350 | 1500 | 15 | 40 | 120
        08.3.01 | Drives arrive after the rooms are ready | k.bellamy | 0 | 80 | 300 | 5 | 20 | 45
        09.1.01 | Controller software changes after the factory test | n.castell | 40 | 160 | 500 | 5 | 15 | 35
        10.1.03 | Floor level out of tolerance, grinding needed | o.varga | 30 | 110 | 280 | 4 | 12 | 25
        11.1.03 | Rock under the retaining wall | h.pell | 40 | 140 | 400 | 3 | 9 | 20
        """;

    /// <summary>As <see cref="Risks"/>; the amounts are gains.</summary>
    public const string Opportunities = """
        03.4.04 | Pumps of all trains tested in one campaign | r.velde | 40 | 120 | 220 | 2 | 6 | 10
        02.3.01 | Vessels shipped with linings done at the works | j.harrow | 20 | 70 | 140 | 3 | 8 | 12
        06.2.03 | Ridge section laid in the dry month | d.finch | 60 | 180 | 320 | 4 | 10 | 16
        08.6.01 | Cable drums pooled with the grid connection | k.bellamy | 15 | 45 | 90 | 0 | 2 | 4
        10.2.02 | Same frame drawings as the workshop | g.holm | 20 | 60 | 110 | 3 | 7 | 12
        """;

    /// <summary>element | text | owner</summary>
    public const string Constraints = """
        01.1 | Marine works stop from 15 December to 15 January | e.sorley
        07.2 | No dredging in April and May | l.penhale
        10.1 | One crane serves hall and racks until the overhead crane is certified | o.varga
        11.2 | Not more than 140 lorries a day on the access road | h.pell
        09.1 | Software is frozen two weeks before each start-up | n.castell
        """;

    /// <summary>element | text | owner | giver | receiver | need by | promised</summary>
    public const string Interfaces = """
        03.1 | Brine flange to exchanger rack 1: position and loads | j.harrow | MEC | PIP | 2027-02-15 | 2027-02-08
        03.2 | Brine flange to exchanger rack 1: position and loads | r.velde | MEC | PIP | 2027-02-15 | 2027-03-01
        03.4 | Motor terminals to variable-speed drives: cable list | a.brandt | ELE | MEC | 2027-06-01 | 2027-06-21
        03.4.05 | Junction boxes of train D: signal list | p.drummond | INS | MEC | 2027-07-05 | 2027-09-13
        08.1 | Line bay to the owner's line: fault level and settings | k.bellamy | Owner | ELE | 2027-04-01 | 2027-05-17
        10.1 | Anchor bolts of racks: plan at 1:50 | o.varga | MEC | CIV | 2027-03-01 | 2027-03-01
        10.1.03 | Trenches for brine pipework: levels | d.finch | PIP | CIV | 2027-05-03 | 2027-05-24
        06.3 | Tie-in at the reservoir: date of the night | o.varga | Owner | CIV | 2028-01-17 | 2028-02-14
        09.1 | Pump packages to control: signal lists | n.castell | MEC | INS | 2027-03-15 | 2027-04-12
        02.4 | Ultrafiltration racks to hall floor: loads | a.brandt | MEC | CIV | 2026-12-01 | 2026-11-23
        """;
}
