using Plenum.Core.Foundation;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>The dictionary does not say what comes out of an element or when it is done.</summary>
public sealed class DictionaryRule(ElementTree tree) : ElementRule(tree)
{
    public override string Name => "dictionary_incomplete";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "Without an output and a sign that it is done, two people will mean different work by the same name.";

    public override string Remedy =>
        "Write down what it delivers and by what its acceptance is known.";

    public override string Source =>
        "MIL-STD-881F section 2, GAO-20-195G (dictionary of every element)";

    protected override string? Message(int row)
    {
        var output = Tree.Elements.Texts(ElementTable.Output)[row] is null;
        var acceptance = Tree.Elements.Texts(ElementTable.Acceptance)[row] is null;
        return (output, acceptance) switch
        {
            (true, true) =>
                $"The dictionary names neither output nor acceptance of {Tree.Name(row)}.",
            (true, false) => $"The dictionary names no output of {Tree.Name(row)}.",
            (false, true) => $"The dictionary names no acceptance of {Tree.Name(row)}.",
            _ => null,
        };
    }
}

/// <summary>The dictionary repeats the name.</summary>
public sealed class DictionaryRepeatsRule(ElementTree tree) : ElementRule(tree)
{
    public override string Name => "dictionary_repeats_name";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "A description that only repeats the name describes nothing.";

    public override string Remedy =>
        "Say what is in it, what is not, and where it meets its neighbours.";

    public override string Source =>
        "MIL-STD-881F section 2, GAO-20-195G (dictionary of every element)";

    protected override string? Message(int row)
    {
        var name = Tree.Name(row).Trim();
        return
            IsName(Tree.Elements.Texts(ElementTable.Description)[row])
            || IsName(Tree.Elements.Texts(ElementTable.Output)[row])
            ? $"The dictionary says of {name} no more than its name."
            : null;

        bool IsName(string? text) =>
            text?.Trim(' ', '.').Equals(name, StringComparison.OrdinalIgnoreCase) == true;
    }
}
