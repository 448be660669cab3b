namespace Heaveline.Cli.Commands;

/// <summary>Which study a machine helps with.</summary>
/// <param name="At">Where it is found, HOST:PORT.</param>
/// <param name="Code">Its code.</param>
/// <param name="Threads">On how many threads; null: as many as there are processors.</param>
/// <param name="Members">Where machines are noted; null: at that of the study.</param>
internal sealed record HelpOutAsked(string At, string Code, int? Threads, string? Members);
