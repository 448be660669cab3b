namespace Heaveline.Web.Pages.Cars;

/// <summary>What was typed into a field of the page and did not reach the program any more.</summary>
/// <param name="Place">The field: its id, or what it is called.</param>
/// <param name="Label">The value in words, such as front unsprung mass.</param>
/// <param name="Value">What stood in it.</param>
public sealed record LateEntry(string Place, string Label, string Value);
