using Heaveline.Studies;
using Heaveline.Web.Pages.Parts;

namespace Heaveline.Web.Pages.Rules;

/// <summary>The rules and measures as a reader chooses them.</summary>
internal static class RuleWords
{
    /// <summary>Every rule.</summary>
    public static IReadOnlyList<Choice> Rules { get; } = [.. MapRule.Words.Select(word => new Choice(word, Rule(word)))];

    /// <summary>Every measure.</summary>
    public static IReadOnlyList<Choice> Measures { get; } = [.. MapRule.Measures.Select(word => new Choice(word, Measure(word), word.StartsWith("hit", StringComparison.Ordinal) ? "The hit" : "The settling"))];

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

    private static string Measure(string word) => word switch
    {
        "settling" => "RMS pitch of the first second",
        "late" => "pitch later than 0.8 s",
        "hit" => "peak pitch acceleration",
        "hit-angle" => "peak pitch angle",
        _ => word,
    };
}
