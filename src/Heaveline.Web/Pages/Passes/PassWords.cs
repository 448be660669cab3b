using Heaveline.Figures;
using Heaveline.Files;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Passes;

/// <summary>What the page says about a view in sentences.</summary>
internal static class PassWords
{
    /// <summary>The page's heading: the car that the verdict is on.</summary>
    public static string Heading(PassView view) => (ReferenceEquals(view.After, view.Now) ? view.Described.Name : view.After.Name)
        + $" over {PassFigure.Named(view.Road.MetBy(view.Now.Model.Rolls))} at {Printed.Speed(view.Now.Pass.Speed)}";

    /// <summary>What happened, without the opening that the heading has said, as paragraphs: how it pitched; then wheels, seats and lamp.</summary>
    public static IReadOnlyList<string> Story(PassView view)
    {
        var sentences = PassStory.Of(view.Now.Pass, view.Now.Measures)
            .Where(s => s.Id != "opening").ToLookup(s => PassStory.First.Contains(s.Id), s => s.Text);
        return [string.Join(' ', sentences[true]), string.Join(' ', sentences[false])];
    }

    /// <summary>
    /// That what is computed rests on numbers of the car's file that look like slips, or on something that it does not say, with the first of each;
    /// empty where neither is so.
    /// </summary>
    /// <param name="warnings">What the file's reader found doubtful.</param>
    public static string Slips(IReadOnlyList<Warning> warnings) =>
        string.Join(' ', new[] { Slipped([.. warnings.Where(one => !one.IsUnknown)]), Unknown([.. warnings.Where(one => one.IsUnknown)]) }
            .Where(words => words.Length > 0));

    private static string Unknown(IReadOnlyList<Warning> unknown) => unknown.Count switch
    {
        0 => "",
        1 => $"Something that this rests on is not known: {unknown[0].Message} {unknown[0].Advice}",
        _ => $"{unknown.Count} things that this rests on are not known: {unknown[0].Message} {unknown[0].Advice} "
            + "The others stand on the page of the car.",
    };

    private static string Slipped(IReadOnlyList<Warning> slips) => slips.Count switch
    {
        0 => "",
        1 => $"This is computed with a number of the car's file that looks like a slip: {slips[0].Message} {slips[0].Advice}",
        _ => $"This is computed with {slips.Count} numbers of the car's file that look like slips: {slips[0].Message} {slips[0].Advice} "
            + "The others stand on the page of the car.",
    };

    /// <summary>What has changed against the former state; null when there is none to compare with.</summary>
    public static string? Against(PassView view)
    {
        if (view.Before is not { } before)
        {
            return view.FormerProblem;
        }

        if (!before.IsWhole || !view.After.IsWhole)
        {
            return "One of the two crossings breaks off, so that their numbers are not compared. "
                + (view.After.IsWhole ? BrokenOff.Words(before.Pass) : "");
        }

        var changes = view.Changes;
        string? Part(Measure<Pass> measure) => changes.FirstOrDefault(c => c.Measure == measure) is { } change
            ? $"the {measure.Name} " + (change.IsHardlyAny
                ? $"stays at {change.PrintWithUnit(change.After)}"
                : $"goes from {change.Print(change.Before)} to {change.PrintWithUnit(change.After)} ({change.Words})")
            : null;
        return (view.IsTurned ? $"{BaseFirst.Words(view.After.Name, before.Name)} From the one to the other " : $"Against {view.Against}: ")
            + $"{string.Join("; ", PassCatalogue.PitchOver(view.Now.Pass.Road).Select(Part).OfType<string>())}.";
    }
}
