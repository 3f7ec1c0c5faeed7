namespace Plenum.Samples;

/// <summary>A fault that was put into the demo project on purpose, so that there is something to find.</summary>
/// <param name="Kind">What kind of fault, in a few words; the same words for the same kind.</param>
/// <param name="Code">The element, account or scope item on which it stands.</param>
/// <param name="Description">What is wrong there, in plain words.</param>
public sealed record PlantedFault(string Kind, string Code, string Description);
