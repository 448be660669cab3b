using Heaveline.Measures;
using Heaveline.Studies;
using Heaveline.Web.Pages.Parts;

namespace Heaveline.Web.Pages.Rules;

/// <summary>The rules and measures as a reader chooses them.</summary>
internal static class RuleWords
{
    /// <summary>Every rule.</summary>
    public static IReadOnlyList<ListEntry> Rules { get; } = [.. MapRule.Words.Select(word => new ListEntry(word, Rule(word)))];

    /// <summary>Every measure.</summary>
    public static IReadOnlyList<ListEntry> Measures { get; } = [.. PassCatalogue.Judges.Select(measure => new ListEntry(measure.Word!, measure.Name))];

    /// <summary>Whether a rule is judged on a linear car of the same masses and frequencies, so that no setting of the real car stands for its values.</summary>
    public static bool IsOfLinearCar(string rule) => rule.StartsWith("shared", StringComparison.Ordinal);

    private static string Rule(string word) => word switch
    {
        "ratio" => "rear over front frequency",
        "damping" => "damping",
        "index" => "dynamic index",
        "wheelbase" => "wheelbase, inertia growing with it",
        "wheelbase-same-body" => "wheelbase, the same body",
        "shared-springs" => "springs shared front to rear",
        "shared-damping" => "damping shared front to rear",
        _ => word,
    };
}
