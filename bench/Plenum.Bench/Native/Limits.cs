using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text;

namespace Plenum.Bench.Native;

/// <summary>
/// The loops of <c>limits.cpp</c>, built here for this very processor. Everything passed in is plain memory; the loops
/// check nothing.
/// </summary>
internal sealed unsafe class Limits
{
    private readonly delegate* unmanaged<int*, long, int, long**, long**, void> rollUp;
    private readonly delegate* unmanaged<
        long,
        int*,
        int*,
        long*,
        int*,
        int,
        int*,
        long*,
        void> timePhase;
    private readonly delegate* unmanaged<byte*, byte*, long, byte*, long, long*, long> ledger;
    private readonly delegate* unmanaged<byte*, long> lineEnds;
    private readonly delegate* unmanaged<long, int*, int*, int*, int*, int*, int*, void> network;
    private readonly delegate* unmanaged<
        long,
        long,
        int*,
        int*,
        int*,
        int*,
        int*,
        int*,
        long> networkRaw;

    private Limits(string library, string compiler)
    {
        Compiler = compiler;
        var handle = NativeLibrary.Load(library);
        rollUp = (delegate* unmanaged<int*, long, int, long**, long**, void>)
            NativeLibrary.GetExport(handle, "roll_up");
        timePhase = (delegate* unmanaged<long, int*, int*, long*, int*, int, int*, long*, void>)
            NativeLibrary.GetExport(handle, "time_phase");
        ledger = (delegate* unmanaged<byte*, byte*, long, byte*, long, long*, long>)
            NativeLibrary.GetExport(handle, "ledger");
        lineEnds = (delegate* unmanaged<byte*, long>)NativeLibrary.GetExport(handle, "line_ends");
        network = (delegate* unmanaged<long, int*, int*, int*, int*, int*, int*, void>)
            NativeLibrary.GetExport(handle, "network");
        networkRaw = (delegate* unmanaged<long, long, int*, int*, int*, int*, int*, int*, long>)
            NativeLibrary.GetExport(handle, "network_raw");
    }

    /// <summary>The compiler and how it was called.</summary>
    public string Compiler { get; }

    /// <summary>Builds the loops; null where there is no compiler.</summary>
    public static Limits? Build(string folder)
    {
        if (Harness.Machine.FirstLineOf("g++", "--version") is not { } version)
        {
            return null;
        }

        var library = Path.Combine(folder, "limits.so");
        var source = Path.Combine(AppContext.BaseDirectory, "Native", "limits.cpp");
        using var process = Process.Start(
            "g++",
            ["-O3", "-march=native", "-std=c++17", "-shared", "-fPIC", "-o", library, source]
        );
        process.WaitForExit();
        return process.ExitCode == 0
            ? new Limits(library, version + ", -O3 -march=native")
            : throw new InvalidOperationException($"{source} could not be built.");
    }

    /// <summary>Totals of four measures at every element in depth-first order.</summary>
    public void RollUp(int[] level, int depth, long[][] own, long[][] totals)
    {
        fixed (int* levels = level)
        {
            fixed (
                long* own0 = own[0],
                    own1 = own[1],
                    own2 = own[2],
                    own3 = own[3]
            )
            {
                fixed (
                    long* totals0 = totals[0],
                        totals1 = totals[1],
                        totals2 = totals[2],
                        totals3 = totals[3]
                )
                {
                    var from = stackalloc long*[] { own0, own1, own2, own3 };
                    var to = stackalloc long*[] { totals0, totals1, totals2, totals3 };
                    rollUp(levels, level.Length, depth, from, to);
                }
            }
        }
    }

    /// <summary>Even spread of five amounts a package, rounded on the running total, by account and period.</summary>
    public void TimePhase(
        int[] start,
        int[] finish,
        long[] budget,
        int[] account,
        int[] ends,
        long[] grid
    )
    {
        fixed (
            int* starts = start,
                finishes = finish,
                accounts = account,
                periodEnds = ends
        )
        {
            fixed (
                long* budgets = budget,
                    sums = grid
            )
            {
                timePhase(
                    start.Length,
                    starts,
                    finishes,
                    budgets,
                    accounts,
                    ends.Length,
                    periodEnds,
                    sums
                );
            }
        }
    }

    /// <summary>Sums a ledger file by charge code and period; returns its rows.</summary>
    /// <param name="path">The file.</param>
    /// <param name="charges">Charge codes of seven characters, each with a zero byte behind it.</param>
    /// <param name="periods">The same for the periods.</param>
    /// <param name="sums">Receives the sums: a row of periods for each charge code.</param>
    public long Ledger(string path, byte[] charges, byte[] periods, long[] sums)
    {
        fixed (
            byte* file = Encoding.UTF8.GetBytes(path + '\0'),
                chargeCodes = charges,
                periodCodes = periods
        )
        {
            fixed (long* to = sums)
            {
                return ledger(
                    file,
                    chargeCodes,
                    charges.Length / 8,
                    periodCodes,
                    periods.Length / 8,
                    to
                );
            }
        }
    }

    public long LineEnds(string path)
    {
        fixed (byte* file = Encoding.UTF8.GetBytes(path + '\0'))
        {
            return lineEnds(file);
        }
    }

    /// <summary>Early and late places of activities in topological order, links by successor.</summary>
    public void Network(
        int[] inStart,
        int[] from,
        int[] weight,
        int[] work,
        int[] early,
        int[] late
    )
    {
        fixed (
            int* starts = inStart,
                froms = from,
                weights = weight,
                works = work,
                earlies = early,
                lates = late
        )
        {
            network(work.Length, starts, froms, weights, works, earlies, lates);
        }
    }

    /// <summary>The same from links and activities in any order.</summary>
    public void NetworkRaw(int[] from, int[] to, int[] lag, int[] work, int[] early, int[] late)
    {
        fixed (
            int* froms = from,
                tos = to,
                lags = lag,
                works = work,
                earlies = early,
                lates = late
        )
        {
            networkRaw(work.Length, from.Length, froms, tos, lags, works, earlies, lates);
        }
    }
}
