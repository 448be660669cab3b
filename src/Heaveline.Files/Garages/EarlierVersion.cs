namespace Heaveline.Files.Garages;

/// <summary>An earlier version of a file, kept when it was saved over.</summary>
/// <param name="Name">The file that it was, by its name in the garage.</param>
/// <param name="Until">When it was saved over, UTC, to the millisecond.</param>
/// <param name="Bytes">Its size.</param>
public sealed record EarlierVersion(string Name, DateTime Until, long Bytes);
