namespace Plenum.Cli;

/// <summary>Exit statuses of the command line.</summary>
public static class ExitCode
{
    public const int Done = 0;

    /// <summary>The question's answer is "no": the audit found errors, an integrity rule is broken.</summary>
    public const int AnswerIsNo = 1;

    public const int WrongUsage = 2;

    /// <summary>Bad input; nothing changed.</summary>
    public const int BadInput = 3;

    public const int NotAllowed = 4;
}
