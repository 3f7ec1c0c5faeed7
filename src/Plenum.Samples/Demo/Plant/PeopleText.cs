namespace Plenum.Samples.Demo.Plant;

/// <summary>Who works on the plant. All people are invented.</summary>
internal static class PeopleText
{
    /// <summary>unit | name | parent</summary>
    public const string Units = """
        KBY | Kestrel Bay project |
        PMO | Project office | KBY
        ENG | Engineering and supply | KBY
        PRO | Process | ENG
        MEC | Mechanical | ENG
        PIP | Piping | ENG
        ELE | Electrical | ENG
        INS | Control and instruments | ENG
        WRK | Works | KBY
        CIV | Civil and structural | WRK
        MAR | Marine works | WRK
        SIT | Site services | WRK
        """;

    /// <summary>person | name | unit</summary>
    public const string People = """
        a.lindgren | Ada Lindgren | PMO
        b.amsel | Bruno Amsel | PMO
        c.tarn | Cosima Tarn | PMO
        i.roke | Ivo Roke | PMO
        f.dunmore | Fenna Dunmore | ENG
        w.astley | Wim Astley | WRK
        t.quill | Tomas Quill | PRO
        v.ness | Vera Ness | PRO
        e.lorne | Edwin Lorne | PRO
        a.brandt | Anneke Brandt | MEC
        j.harrow | Jonas Harrow | MEC
        r.velde | Rosa Velde | MEC
        b.colm | Birgit Colm | MEC
        s.ibara | Sade Ibara | MEC
        k.ostrom | Karel Ostrom | MEC
        d.finch | Dunja Finch | PIP
        m.oduya | Mattias Oduya | PIP
        l.garrow | Lena Garrow | PIP
        u.stenhouse | Udo Stenhouse | PIP
        k.bellamy | Kestutis Bellamy | ELE
        s.rask | Signe Rask | ELE
        y.merrin | Yusuf Merrin | ELE
        n.castell | Noemi Castell | INS
        p.drummond | Pascal Drummond | INS
        z.faber | Zora Faber | INS
        g.holm | Gerda Holm | CIV
        o.varga | Oskar Varga | CIV
        h.trell | Hanne Trell | CIV
        r.quayle | Rufus Quayle | CIV
        e.sorley | Elspeth Sorley | MAR
        l.penhale | Lowen Penhale | MAR
        j.skerry | Jory Skerry | MAR
        h.pell | Hester Pell | SIT
        o.wick | Ottilie Wick | SIT
        """;
}
