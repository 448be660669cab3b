namespace Heaveline.Rules;

/// <summary>One side of a rule in words: the car at the reference ("equal ends") or the car that the rule recommends ("the softer front").</summary>
/// <param name="Name">Its name, as it stands in a sentence.</param>
/// <param name="IsPlural">Whether it is several.</param>
public sealed record RuleSide(string Name, bool IsPlural = false)
{
    /// <summary>"equal ends bottom out".</summary>
    public string BottomsOut => Name + (IsPlural ? " bottom out" : " bottoms out");

    /// <summary>"the softer front passes".</summary>
    public string Passes => Name + (IsPlural ? " pass" : " passes");
}
