namespace Heaveline.Files.Garages;

/// <summary>A text of a garage as it lies on the disk, or the reason why it cannot be had.</summary>
/// <param name="Name">The file's name inside the garage.</param>
/// <param name="Text">The text, a byte order mark at its start included; null when refused.</param>
/// <param name="Stamp">The stamp of the text, to be given back with the save; null when refused.</param>
/// <param name="Refusal">Why there is no text; null when there is.</param>
public sealed record GarageText(string Name, string? Text, Stamp? Stamp, Refusal? Refusal);
