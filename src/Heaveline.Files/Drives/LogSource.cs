namespace Heaveline.Files.Drives;

/// <summary>The bytes of one text of a log.</summary>
/// <param name="Name">The file as the user named it, with the name inside an archive behind it.</param>
/// <param name="Bytes">All of them.</param>
internal sealed record LogSource(string Name, byte[] Bytes);
