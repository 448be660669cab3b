using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The amounts of a worksheet as they were typed, so that a refusal quotes them and states its limit in their unit.</summary>
internal sealed class TypedAmounts
{
    private readonly List<(string Said, string Words, Unit? Unit, TypedCell Cell)> all = [];

    /// <summary>What is odd about single readings, a sentence each.</summary>
    public List<string> Odd { get; } = [];

    /// <summary>Nothing typed: what is asked in code.</summary>
    public static TypedAmounts None { get; } = new();

    /// <summary>Notes an amount.</summary>
    /// <param name="amount">The amount.</param>
    /// <param name="cell">How it was typed, and where.</param>
    /// <param name="unit">Its unit; null for none.</param>
    public void Add<T>(Amount<T> amount, TypedCell cell, Unit? unit)
        where T : struct, IDimension => all.Add((amount.WithDoubt(0.0).ToString(), cell.Words.Trim(), unit, cell));

    /// <summary>Which reading a restated refusal is about; null where it is about none.</summary>
    /// <param name="restated">The refusal.</param>
    public TypedCell? Of(RefusedValueException restated) =>
        all.FirstOrDefault(a => Numeral.WithoutPowers(a.Words) == restated.Value) is { Words: not null, Cell: var cell } ? cell : null;

    /// <summary>The refusal in the words that were typed; as it is where it is about none of them.</summary>
    /// <param name="refused">The refusal.</param>
    public RefusedValueException Restate(RefusedValueException refused)
    {
        var typed = all.FirstOrDefault(a => a.Said == refused.Value);
        return typed.Words is null
            ? refused
            : new RefusedValueException(refused.What, typed.Words, typed.Unit is { } unit ? refused.LimitIn(unit) : refused.Limit, refused.Advice);
    }
}
