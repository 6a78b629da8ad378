using Google.Rpc;

namespace FleetTrend.Intake;

/// <summary>Why something was refused: the reason of google.rpc.ErrorInfo, the status code that goes with it, and what to do.</summary>
/// <param name="Name">UPPER_SNAKE_CASE; never renamed.</param>
/// <param name="Code">Status code of the call or of the record's outcome.</param>
/// <param name="Advice">What the caller can do, a sentence; protos/README.md prints it.</param>
public sealed record Reason(string Name, Code Code, string Advice);
