namespace Heaveline.Web.Pages.Passes;

/// <summary>A pinned trial, or the present one under another load, as it came out.</summary>
/// <param name="Words">What it sets, or the load's name.</param>
/// <param name="Effect">What it does to the nodding, in words; empty where there is nothing to hold it against.</param>
/// <param name="Numbers">Its numbers, each with its name; none where the crossing broke off.</param>
/// <param name="Curve">Its pitch over time, as points of a line; empty for none.</param>
/// <param name="Behind">The pitch of what it is held against.</param>
/// <param name="Problem">Why there is nothing of it; null when there is.</param>
/// <param name="BreaksOff">Whether it is driven and breaks off before its end.</param>
public sealed record TrayTrial(
    string Words,
    string Effect,
    IReadOnlyList<(string Name, string Value)> Numbers,
    string Curve,
    string Behind,
    string? Problem,
    bool BreaksOff);
