namespace Heaveline.Web.Pages.Rules;

/// <summary>The page's headline: the rule as a question.</summary>
internal static class RuleHeading
{
    /// <summary>For a rule's word; a general one for a word that is no rule.</summary>
    public static string Of(string rule) => rule switch
    {
        "ratio" => "Does a front softer than the rear pitch less?",
        "damping" => "Does more damping pitch less?",
        "index" => "Does mass towards the ends pitch less?",
        "wheelbase" => "Does a longer car pitch less?",
        "wheelbase-same-body" => "Does a longer wheelbase under the same body pitch less?",
        "shared-springs" => "Do springs joined front to rear pitch less?",
        "shared-damping" => "Do dampers joined front to rear pitch less?",
        _ => "Where does a rule of the trade hold?",
    };
}
