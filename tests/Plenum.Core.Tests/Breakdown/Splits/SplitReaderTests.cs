using Plenum.Core.Breakdown.Splits;

namespace Plenum.Core.Tests.Breakdown.Splits;

public class SplitReaderTests
{
    [Fact]
    public void Dump()
    {
        var reader = new SplitReader(SplitWords.Of("en")!);
        var o = new System.Text.StringBuilder();
        foreach (var split in LabelledSplit.All)
        {
            var read = split.ReadBy(reader);
            o.Append($"{(split.IsAside ? "aside" : "tuning")} {(read is null ? "silent" : read == split.Label ? "right" : "wrong")} #{split.Number} label {split.Label} read {read}");
            if (!split.IsAside && read != split.Label)
            {
                var r = reader.Read([.. split.Children.Select(name => new SplitPart(name))]);
                o.Append($"  {split.Parent}: {string.Join("; ", split.Children)} => {string.Join(", ", r.Evidence.Select(e => $"{e.Part}:{(e.Logic<0?"":SplitLogic.Names.Format(e.Logic))}:{e.Told}"))} [{string.Join(" ", r.Supports.Select(s => s.ToString("0.00")))}]");
            }
            o.Append('\n');
        }
        o.Append(Score.Of(LabelledSplit.All.Where(s => !s.IsAside), SplitWords.Of("en")!));
        o.Append(Score.Of(LabelledSplit.All.Where(s => s.IsAside), SplitWords.Of("en")!));
        File.WriteAllText("/tmp/proof/dump.txt", o.ToString());
    }
}
