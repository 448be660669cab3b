namespace Heaveline.Cli.Commands;

/// <summary>How a machine stands by.</summary>
/// <param name="File">The file of the crew.</param>
/// <param name="Threads">On how many threads; null: as the file says.</param>
/// <param name="Name">What this machine is called; null: as the network calls it.</param>
/// <param name="MakesCode">Whether the file of the code is made, and nothing else.</param>
internal sealed record StandByOptions(string File, int? Threads, string? Name, bool MakesCode);
