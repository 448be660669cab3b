namespace Heaveline.Cli.Commands;

/// <summary>How the pages are asked for.</summary>
/// <param name="Garage">The folder of car files; null for the demo garage.</param>
/// <param name="Units">The units to be remembered for it; null leaves them.</param>
/// <param name="Port">Port to listen at; 0 takes any free one.</param>
/// <param name="Open">The address to answer other machines at; null answers this one alone.</param>
/// <param name="Encrypted">Whether to encrypt the pages on this machine alone too.</param>
internal sealed record ServeAsked(string? Garage, string? Units, int Port, string? Open, bool Encrypted);
