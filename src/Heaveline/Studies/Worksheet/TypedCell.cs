namespace Heaveline.Studies;

/// <summary>One reading as it was typed, and where.</summary>
/// <param name="Choice">The choice that it was given for.</param>
/// <param name="Words">The words.</param>
/// <param name="Place">Where it stands among those of its choice.</param>
internal readonly record struct TypedCell(Choice Choice, string Words, ReadingPlace Place);
