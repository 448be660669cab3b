using Heaveline.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Web.Tuning;

/// <summary>All settings of a car, in the order in which they are put on it.</summary>
internal static class Settings
{
    /// <summary>The settings.</summary>
    /// <param name="inertiaGrows">Whether the pitch inertia grows with the wheelbase.</param>
    public static IReadOnlyList<Setting> All(bool inertiaGrows) =>
    [
        new SpringSetting(AxleEnd.Front), new SpringSetting(AxleEnd.Rear),
        new DampingSetting(AxleEnd.Front), new DampingSetting(AxleEnd.Rear),
        new StopSetting(AxleEnd.Front), new StopSetting(AxleEnd.Rear),
        new LinkSetting(IsDamper: false), new LinkSetting(IsDamper: true),
        new WheelbaseSetting(inertiaGrows),
    ];

    /// <summary>A car with some of them set. What the car has nothing of is passed over.</summary>
    public static Car Apply(Car described, IReadOnlyDictionary<string, double> values, bool inertiaGrows)
    {
        var car = All(inertiaGrows).Where(setting => values.ContainsKey(setting.Key) && setting.ScaleOf(described) is not null)
            .Aggregate(described, (car, setting) => setting.Apply(car, values[setting.Key]));
        return LinkSetting.WithoutIdle(car);
    }

    /// <summary>
    /// The changed keys of the described car's file that say the same. What is set is as uncertain as the number in whose place it stands: nothing
    /// was measured anew.
    /// </summary>
    public static IReadOnlyList<KeyEdit> Words(
        Car described, Car changed, IReadOnlyDictionary<string, double> values, bool inertiaGrows, Node root) =>
        [.. All(inertiaGrows).Where(setting => values.ContainsKey(setting.Key) && setting.ScaleOf(described) is not null)
            .SelectMany(setting => setting.Words(changed, root)).DistinctBy(edit => string.Join('\n', edit.Path))
            .Select(edit => AsDoubtful(edit, root))];

    private static KeyEdit AsDoubtful(KeyEdit edit, Node root)
    {
        var former = edit.Value?.Kind == NodeKind.Scalar ? Described(edit.Path, root) : "";
        var mark = QuantityForm.DoubtMarks.Where(sign => former.Contains(sign, StringComparison.Ordinal)).MaxBy(sign => sign.Length);
        if (mark is null)
        {
            return edit;
        }

        var at = former.IndexOf(mark, StringComparison.Ordinal);
        var (value, doubt) = (former[..at].Trim(), former[(at + mark.Length)..].Trim());
        var unit = QuantityText.NumberOf(doubt).Length == doubt.Length ? $" {value[QuantityText.NumberOf(value).Length..].Trim()}" : "";
        return KeyEdit.Put(edit.Path, $"{edit.Value!.Text} ± {doubt}{unit}".TrimEnd());
    }

    // An inertia may stand in the place of an index, whose per cent is its own.
    private static string Described(IReadOnlyList<string> path, Node root) =>
        root.At([.. path])?.Text
        ?? (path is ["body", "pitch-inertia"] && root.At("body", "pitch-index")?.Text is { } index && index.TrimEnd().EndsWith('%') ? index : "");
}
