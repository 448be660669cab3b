using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Passes;

/// <summary>What the page says about a view in sentences.</summary>
internal static class PassWords
{
    /// <summary>The page's heading: the car that the verdict is on.</summary>
    public static string Heading(PassView view) => (ReferenceEquals(view.After, view.Now) ? view.Described.Name : view.After.Name)
        + $" over {PassFigure.Named(view.Road)} at {Printed.Speed(view.Now.Pass.Speed)}";

    /// <summary>What happened, without the opening that the heading has said, as paragraphs: how it pitched; then wheels, seats and lamp.</summary>
    public static IReadOnlyList<string> Story(PassView view)
    {
        var sentences = PassStory.Of(view.Now.Pass, view.Now.Measures)
            .Where(s => s.Id != "opening").ToLookup(s => PassStory.First.Contains(s.Id), s => s.Text);
        return [string.Join(' ', sentences[true]), string.Join(' ', sentences[false])];
    }

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
                + $"{(view.After.IsWhole ? before : view.After).Pass.OutcomeSentence}";
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
