namespace Heaveline.Studies;

/// <summary>What the readings of every worksheet have in common.</summary>
public abstract record SheetAsked
{
    /// <summary>How the amounts were typed.</summary>
    internal TypedAmounts Typed { get; init; } = TypedAmounts.None;
}
