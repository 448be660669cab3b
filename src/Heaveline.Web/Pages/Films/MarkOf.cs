namespace Heaveline.Web.Pages.Films;

/// <summary>A mark that a frame asks for.</summary>
/// <param name="Word">Its word for the page's script.</param>
/// <param name="Label">What it is called.</param>
public sealed record MarkOf(string Word, string Label);
