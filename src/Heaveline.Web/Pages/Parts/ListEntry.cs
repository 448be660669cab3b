namespace Heaveline.Web.Pages.Parts;

/// <summary>One entry of a list to choose from.</summary>
/// <param name="Value">As it stands in the address.</param>
/// <param name="Words">As the reader sees it.</param>
/// <param name="Group">Heading it stands under. Blank for none.</param>
public readonly record struct ListEntry(string Value, string Words, string Group = "");
