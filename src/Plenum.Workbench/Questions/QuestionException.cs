namespace Plenum.Workbench.Questions;

/// <summary>A question that makes no sense for this project: says what was asked and what can be asked.</summary>
public sealed class QuestionException(string message) : Exception(message);
