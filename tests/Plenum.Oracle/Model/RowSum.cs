using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>Sums the pieces of a row and takes the row's measures from the sums.</summary>
public sealed class RowSum(Facts facts, int now, bool lastPeriodAlone)
{
    /// <summary>The row of the given pieces.</summary>
    /// <param name="code">The row's code.</param>
    /// <param name="name">The row's name.</param>
    /// <param name="pieces">What belongs to the row.</param>
    /// <param name="undistributed">Budget that no package has, which counts in BAC, ETC and EAC.</param>
    public Row Of(string code, string name, IReadOnlyList<Piece> pieces, BigInteger undistributed)
    {
        var planned = Series(pieces, piece => piece.Planned);
        var earned = Series(pieces, piece => piece.Earned);
        var actual = Series(pieces, piece => piece.Actual);
        var committed = Series(pieces, piece => piece.Committed);
        var bac = Sum(pieces.Select(piece => piece.Budget)) + undistributed;
        var (pv, ev, ac) = (planned[now], earned[now], actual[now]);
        var eac = ac + Sum(pieces.Select(piece => piece.Remaining[now])) + undistributed;
        var (spi, cpi) = (Ratio.Quotient(ev, pv), Ratio.Quotient(ev, ac));
        var schedule = EarnedSchedule.Of(facts, planned, earned, now);

        var variances = pieces
            .GroupBy(piece => (piece.IsAccountCharge, piece.Owner))
            .Select(group =>
                (
                    Pv: Shown(group, p => p.Planned),
                    Ev: Shown(group, p => p.Earned),
                    Ac: Shown(group, p => p.Actual)
                )
            )
            .ToList();
        var cvOffsets = Offsets.Of(variances.Select(one => one.Ev - one.Ac));
        var svOffsets = Offsets.Of(variances.Select(one => one.Ev - one.Pv));
        var (shownPv, shownEv, shownAc) = (Shown(planned), Shown(earned), Shown(actual));

        return new Row
        {
            Code = code,
            Name = name,
            Bac = bac,
            Pv = shownPv,
            Ev = shownEv,
            Ac = shownAc,
            Committed = Shown(committed),
            Sv = shownEv - shownPv,
            Cv = shownEv - shownAc,
            Spi = Ratio.Quotient(shownEv, shownPv),
            Cpi = Ratio.Quotient(shownEv, shownAc),
            PercentComplete = Ratio.Quotient(ev, bac),
            PercentSpent = Ratio.Quotient(ac, bac),
            Etc = eac - ac,
            Eac = eac,
            Vac = bac - eac,
            EacPlan = Forecasts.Plan(bac, ev, ac),
            EacCpi = Forecasts.ByIndex(bac, ev, ac, cpi),
            EacCpiSpi = Forecasts.ByIndex(bac, ev, ac, Forecasts.Product(cpi, spi)),
            EacCpi3 = Forecasts.ByIndex(
                bac,
                ev,
                ac,
                Forecasts.CpiOfThreePeriods(earned, actual, now)
            ),
            TcpiBac = Ratio.Quotient(bac - ev, bac - ac),
            TcpiEac = Ratio.Quotient(bac - ev, eac - ac),
            Es = schedule.Es,
            AtPeriods = schedule.AtPeriods,
            SpiT = schedule.SpiT,
            ForecastFinish = schedule.ForecastFinish,
            CvFavourable = cvOffsets.Favourable,
            CvUnfavourable = cvOffsets.Unfavourable,
            CvMasking = cvOffsets.Masking,
            SvFavourable = svOffsets.Favourable,
            SvUnfavourable = svOffsets.Unfavourable,
            SvMasking = svOffsets.Masking,
        };
    }

    private static BigInteger Sum(IEnumerable<BigInteger> amounts) =>
        amounts.Aggregate(BigInteger.Zero, BigInteger.Add);

    private List<BigInteger> Series(
        IReadOnlyList<Piece> pieces,
        Func<Piece, IReadOnlyList<BigInteger>> series
    ) =>
        [
            .. Enumerable
                .Range(0, facts.Periods.Count + 1)
                .Select(i => Sum(pieces.Select(piece => series(piece)[i]))),
        ];

    /// <summary>The running total, or the last period's part of it: the difference of two running totals.</summary>
    private BigInteger Shown(IReadOnlyList<BigInteger> runningTotals) =>
        lastPeriodAlone && now > 0
            ? runningTotals[now] - runningTotals[now - 1]
            : runningTotals[now];

    private BigInteger Shown(
        IEnumerable<Piece> pieces,
        Func<Piece, IReadOnlyList<BigInteger>> series
    ) => Sum(pieces.Select(piece => Shown(series(piece))));
}
