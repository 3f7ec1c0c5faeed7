using Plenum.Oracle.Tables;

namespace Plenum.Workbench.Tests.Audit;

/// <summary>A pair of examples for a rule of the audit, as changes of the sound project.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Code">Where it finds something in the bad example.</param>
/// <param name="Bad">Makes the fault.</param>
/// <param name="Good">Comes near to it and is in order.</param>
internal sealed record RuleExample(
    string Rule,
    string Code,
    Action<TextProject> Bad,
    Action<TextProject> Good
);
