namespace Plenum.Samples.Demo.Plant;

/// <summary>The scope statement of the plant, and what of the plant answers each item.</summary>
internal static class ScopeText
{
    /// <summary>
    /// item | kind | text | elements that answer it, between semicolons; after a colon the phrase that they answer. A
    /// question mark in the place of an element: nothing answers the phrase yet.
    /// A parent is the item without its last number, where there is one.
    /// </summary>
    public const string Items = """
        1 | requirement | The contractor designs, builds, starts and hands over one seawater desalination plant at Kestrel Bay. | 01;02;03;04;06;07;08;09
        1.1 | requirement | The plant delivers 78 500 m³ of drinking water a day. | 03;06
        1.2 | requirement | The plant serves for 30 years with usual replacement of membranes. | 03;02.4
        1.3 | requirement | All documents are in English and in one numbering system. | 09.4
        1.4 | acceptance | The plant runs for 30 days at its rated output within the energy limit. | 09.4.02
        2 | requirement | The work is organised so that the bay remains open to vessels. | 07.5;01.1
        2.1 | requirement | Marine works stop from 15 December to 15 January. | 01.1;01.2;07.2;07.3
        2.2 | constraint | No dredging in the spawning season, April and May. |
        2.3 | constraint | Night work on land needs the consent of the township. |
        2.4 | requirement | Roads outside the fence are restored to their first state. | 11.2.01
        3 | requirement | The site is prepared, drained and fenced. | 11.1;11.3;11.5.01
        3.1 | deliverable | The site is cleared and levelled, and a retaining wall holds the slope. | 11.1
        3.2 | deliverable | An access road of two lanes, and paved roads inside the fence. | 11.2
        3.3 | deliverable | Storm water and foul water leave the site by gravity. | 11.3.01:Storm water;11.3.02:foul water
        3.4 | deliverable | Temporary offices, stores and power for all works teams. | 11.4
        3.5 | deliverable | A fence with two gates encloses the plant. | 11.5.01
        3.7 | deliverable | A jetty on which equipment is landed. |
        3.6 | acceptance | Every drain is filmed and shows no standing water. | 11.3
        4 | requirement | The plant consists of the works that follow. | 01;02;03;04;06;07;08;09
        4.1 | requirement | Intake | 01
        4.1.1 | deliverable | An intake structure draws water at 9 m depth at less than 0.15 m/s. | 01.1
        4.1.2 | deliverable | Two pipelines bring the water ashore. | 01.2
        4.1.3 | deliverable | A pumping station with band screens and five pumps, one of them in reserve. | 01.3.03:band screens;01.3.01:five pumps;01.3.02:five pumps;01.3.06:pumping station
        4.1.4 | requirement | The intake is kept free of growth by chlorine made on site. | 01.4
        4.1.5 | deliverable | A buried main brings the seawater to pre-treatment. | 01.5
        4.1.6 | acceptance | A survey shows the inflow speed at every opening. | 01.1.02
        4.2 | requirement | Pre-treatment | 02
        4.2.1 | requirement | Filtered water has a silt density index below 2.5 at all times. | 02.3;02.4;02.5
        4.2.2 | deliverable | Flotation that can be taken out of the flow when the sea is clean. | 02.2
        4.2.3 | deliverable | Dual-media filters with air scour. | 02.3
        4.2.4 | deliverable | Ultrafiltration with an integrity test of every rack. | 02.4
        4.2.5 | deliverable | Cartridge filters before every high-pressure pump. | 02.5
        4.2.6 | deliverable | Chemicals are dosed in proportion to flow. | 02.1
        4.2.7 | deliverable | Backwash water is settled and returned. | 02.6
        4.3 | requirement | Reverse osmosis | 03
        4.3.1 | requirement | Six first-pass trains, any five of which give the rated output. | 03.1;03.2;03.3;03.4;03.5;03.6;08.3.01;04.1;04.2
        4.3.2 | requirement | Permeate holds less than 350 mg/l dissolved solids at 32 °C sea water. | 03.1.03;03.2.03;03.3.03;03.4.03;03.5.03;03.6.03;03.7
        4.3.3 | deliverable | A second pass holds boron below 1.0 mg/l. | 03.7
        4.3.4 | deliverable | Each train can be cleaned in place, one rack at a time. | 03.8
        4.3.5 | requirement | A stopped train is flushed within 12 minutes. | 03.9
        4.3.6 | requirement | Each train is measured and sampled on its own. | 03.1.10:measured;03.1.11:sampled;03.2.10:measured;03.2.11:sampled;03.3.10:measured;03.3.11:sampled;03.4.10:sampled;03.5.10:measured;03.5.11:sampled;03.6.10:measured;03.6.11:sampled
        4.3.7 | acceptance | Each train runs for 72 hours at 98 % of its rated flow. | 03.1;03.2;03.3;03.4;03.5;03.6
        4.4 | requirement | Product water | 06
        4.4.1 | requirement | The plant delivers 78 500 m³ of drinking water a day at the fence of the Harrow Hill reservoir, at 6.5 bar. | 06.1;06.2;06.3
        4.4.2 | deliverable | Two covered product-water tanks, an east and a west one, hold six hours of output. | 05.4.01:an east;?:a west one
        4.4.3 | requirement | Remineralisation brings the water to a hardness of 80 to 120 mg/l. | 05.1
        4.4.4 | requirement | The water is disinfected with 30 minutes of contact. | 05.2
        4.4.5 | deliverable | Chemicals are stored in bunds that hold 110 % of the largest tank. | 05.3
        4.4.6 | deliverable | A station where every point can be sampled. | 05.5
        4.4.7 | deliverable | A chamber for the meters on which the water is sold. | 06.4
        4.4.8 | acceptance | The tanks lose less than 1 mm a day over seven days. | 05.4.01;05.4.03
        4.5 | requirement | Discharge to sea | 07
        4.5.1 | requirement | All brine and filter backwash water is collected and led to one outfall. | 07.1;07.2;02.6
        4.5.2 | requirement | The outfall ends at least 1 100 m offshore in a diffuser field that dilutes the brine to within 5 % of ambient salinity at 100 m, and the contractor measures this for two years. | 07.2:ends at least 1 100 m offshore;07.3:a diffuser field;07.4.01:measures this;07.4.02:measures this;?:for two years
        4.5.3 | deliverable | Sludge leaves the site dewatered to 25 % dry solids or better. |
        4.5.4 | deliverable | Marks and lights keep vessels clear of the diffusers. | 07.5
        4.5.5 | acceptance | A dye survey during the test run shows the dilution. | 07.3
        4.6 | requirement | Energy | 04;08
        4.6.1 | requirement | Specific energy use does not exceed 3.05 kWh per m³, intake to delivery point. | 01.3;03.1.04;03.2.04;03.3.04;03.4.04;03.5.04;03.6.04;04.1;04.2;04.3;06.1;08.3
        4.6.2 | deliverable | The grid connection at 132 kV is built by the contractor up to the line bay. | 08.1
        4.6.3 | deliverable | Emergency power restarts the plant within 60 seconds of a loss. | 08.5
        4.6.4 | requirement | Energy of the brine is recovered at 96 % or better. | 04.1;04.2;04.3
        4.6.5 | requirement | Harmonics at the line bay stay within the grid rules. | 08.3.04
        4.7 | requirement | Control | 09
        4.7.1 | deliverable | One control system runs the whole plant from one room. | 09.1
        4.7.2 | requirement | Loss of one controller stops nothing. | 09.1.01;09.1.03
        4.7.3 | deliverable | Fire detection, cameras and door control for the whole site. | 09.3.01:Fire detection;09.3.02:cameras and door control
        4.7.4 | requirement | Every instrument answers within 50 ms. | 09.2
        4.7.5 | deliverable | A training simulator for the operating staff. | 09.4.01
        4.7.6 | requirement | Alarms can be answered from the reservoir at Harrow Hill. | 09.1
        4.8 | requirement | Buildings | 10.1;10.2;10.3
        4.8.1 | deliverable | A steel hall for reverse osmosis with a crane of 20 t. | 10.1.02:steel hall;10.1.06:a crane of 20 t;10.1.01:steel hall
        4.8.2 | deliverable | A hall for filters and ultrafiltration. | 10.2
        4.8.3 | deliverable | A building for chemicals and switch rooms with fire walls between them. | 10.3
        4.8.4 | deliverable | A workshop with store and gatehouse. | 10.5
        4.8.5 | requirement | Noise at the fence stays below 42 dB at night. | 10.1.04;10.2.02
        5 | exclusion | Not included |
        5.1 | exclusion | Overhead line from the line bay to the grid substation. |
        5.2 | exclusion | Housing for operating staff. |
        5.3 | exclusion | The reservoir at Harrow Hill and all works inside its fence. | 06.3.01
        5.4 | exclusion | Operation after hand-over. |
        5.5 | exclusion | Replacement of membranes after the first set. |
        6 | assumption | What the price rests on |
        6.1 | assumption | The owner provides the sea-bed survey of 2025 and answers for it. |
        6.2 | assumption | Power for the test run is available three months before it. |
        6.3 | assumption | Import of equipment is free of duty. |
        6.4 | assumption | Ground at the site carries 180 kPa at 2 m depth. |
        6.5 | assumption | Pumps for all trains are ordered as one lot of six. |
        7 | requirement | Hand-over | 09.4
        7.1 | deliverable | Operating manuals for every system, in English. | 09.4.03
        7.2 | deliverable | Data of the outfall reach the authority within one hour. | 07.4.02
        7.3 | requirement | Spare parts for two years are delivered before the test run. | 03.1.04;08.3.01
        7.4 | acceptance | No item of category A is open on any punch list. | 09.4.02
        7.5 | constraint | Hand-over no later than 15 December 2028. |
        7.6 | acceptance | The owner's staff run the plant for the last ten days of the test run. | 09.4.02
        8 | constraint | What binds the works |
        8.1 | constraint | The intake stays within the licensed corridor. |
        8.2 | constraint | Not more than 140 lorries a day on the access road. |
        """;

    /// <summary>revision | signed, empty for the draft | what it is about</summary>
    public const string Revisions = """
        1 | 2025-11-20 | As tendered
        2 | 2026-01-14 | As contracted: less energy, no jetty
        3 | | Noise at the fence, alarms at the reservoir
        """;

    /// <summary>item | revision that changed it | kind until then | wording until then</summary>
    public const string Earlier = """
        4.6.1 | 2 | requirement | Specific energy use does not exceed 3.20 kWh per m³, intake to delivery point.
        4.8.5 | 3 | requirement | Noise at the fence stays below 45 dB at night.
        """;

    /// <summary>item | revision that added it</summary>
    public const string Added = """
        4.7.6 | 3
        """;

    /// <summary>item | revision that withdrew it</summary>
    public const string Withdrawn = """
        3.7 | 2
        """;

    /// <summary>query | item | what is asked | asked on | asked by | answer | answered on</summary>
    public const string Queries = """
        Q-01 | 4.5.1 | Is backwash of the test run led to the outfall too? | 2026-05-04 | n.castell | Yes, from the first day on. | 2026-05-18
        Q-02 | 4.5.3 | Who hauls the sludge, and where to? | 2027-07-12 | l.penhale | |
        Q-03 | 4.4.2 | May both tanks stand in the east? | 2027-08-19 | g.holm | |
        """;
}
