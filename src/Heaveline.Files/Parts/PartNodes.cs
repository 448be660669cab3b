using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Files.Parts;

/// <summary>Values of fitted parts as they are written in a car file.</summary>
internal static class PartNodes
{
    /// <summary>A group; what is null is left out.</summary>
    public static Node Group(params (string Key, Node? Value)[] entries) => Node.Group(
        entries.Where(entry => entry.Value is not null).Select(entry => KeyValuePair.Create(entry.Key, entry.Value!)));

    /// <summary>
    /// A group that takes the place of another one: keys of that which the new one has not are taken out, since a variant's groups are laid over
    /// those of its base.
    /// </summary>
    /// <param name="group">The new group.</param>
    /// <param name="before">The group that stands there; null for none.</param>
    /// <param name="kept">Keys that stay as they are.</param>
    public static Node InPlaceOf(this Node group, Node? before, params string[] kept) => Node.Group(
        [
            .. group.Entries.Select(entry => KeyValuePair.Create(entry.Key, entry.Value)),
            .. (before?.Entries ?? []).Where(old => !kept.Contains(old.Key) && group.At(old.Key) is null)
                .Select(old => KeyValuePair.Create(old.Key, Node.Nothing)),
        ]);

    /// <summary>An amount with its unit and its doubt.</summary>
    public static Node Amount<TDimension>(Amount<TDimension> amount, ShownUnit unit)
        where TDimension : struct, IDimension
    {
        var doubt = Number(unit.Of(amount.Doubt.HalfWidth));
        return Node.Scalar($"{Number(unit.Of(amount.Si))}{unit.Suffix}" + (doubt == "0" ? "" : $" ± {doubt}{unit.Suffix}"));
    }

    /// <summary>The same; null of nothing.</summary>
    public static Node? Amount<TDimension>(Amount<TDimension>? amount, ShownUnit unit)
        where TDimension : struct, IDimension => amount is { } given ? Amount(given, unit) : null;

    /// <summary>An amount in the words of its list where those say just that; else as above.</summary>
    /// <param name="amount">The amount.</param>
    /// <param name="unit">The unit where no words say it.</param>
    /// <param name="part">The part that it is of.</param>
    /// <param name="key">Its key in a list.</param>
    public static Node Amount<TDimension>(Amount<TDimension> amount, ShownUnit unit, Part part, string key)
        where TDimension : struct, IDimension =>
        part.Written.Of(key).FirstOrDefault(words => Says(words, amount)) is { } written ? Node.Scalar(written) : Amount(amount, unit);

    /// <summary>The same; null of nothing.</summary>
    public static Node? Amount<TDimension>(Amount<TDimension>? amount, ShownUnit unit, Part part, string key)
        where TDimension : struct, IDimension => amount is { } given ? Amount(given, unit, part, key) : null;

    private static bool Says<TDimension>(string words, Amount<TDimension> amount)
        where TDimension : struct, IDimension => QuantityText.Parse<TDimension>(words) is { IsRead: true, Amount: var read }
        && read.Si == amount.Si && read.Doubt.HalfWidth == amount.Doubt.HalfWidth;

    /// <summary>Rows of a table, in millimetres or metres per second against newtons.</summary>
    public static Node Table(ForceTable table, ShownUnit unit) => Node.List(table.At.Zip(table.Force, (at, force) =>
        Node.List(Node.Scalar($"{Number(unit.Of(at))} {unit.Symbol}"), Node.Scalar($"{Number(force)} N"))));

    /// <summary>The doubt of a table; null where it has none.</summary>
    public static Node? TableDoubt(ForceTable table) => table.Factor.Doubt.IsStated
        ? Node.Scalar($"± {Number(In.Percent.Of(table.Factor.Doubt.HalfWidth / table.Factor.Si))} %")
        : null;

    /// <summary>A name under which errors move together; null for none.</summary>
    public static Node? Name(string? name) => name is null ? null : Node.Scalar(name);

    // Nine decimals in mm, N and N/mm are below any measurement; a file shows no more than it needs.
    private static string Number(double value) => Math.Round(value, 9).ToString("0.#########", CultureInfo.InvariantCulture);
}
