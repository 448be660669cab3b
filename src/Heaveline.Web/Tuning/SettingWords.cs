using Heaveline.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Web.Tuning;

/// <summary>What has been set on a car, as the keys of its file that say the same: the file read back is the car that was seen.</summary>
internal static class SettingWords
{
    /// <summary>
    /// The changed keys of the described car's file that say the same. What is set is as uncertain as the number in whose place it stands: nothing
    /// was measured anew.
    /// </summary>
    public static IReadOnlyList<KeyEdit> Of(
        Car described, Car changed, IReadOnlyDictionary<string, double> values, bool inertiaGrows, Node root) =>
        [.. Settings.All(inertiaGrows).Where(setting => values.ContainsKey(setting.Key) && setting.ScaleOf(described) is not null)
            .SelectMany(setting => Of(setting, changed, root)).DistinctBy(edit => string.Join('\n', edit.Path))
            .Select(edit => AsDoubtful(edit, root))];

    // What one setting has made of the car, be it set together with others.
    private static IEnumerable<KeyEdit> Of(Setting setting, Car changed, Node root) => setting switch
    {
        SpringSetting spring => Spring(changed, spring.End, root),
        DampingSetting damping => Damper(changed, damping.End),
        StopSetting stop => Stop(changed, stop.End),
        LinkSetting => Link(changed, root),
        WheelbaseSetting => Wheelbase(changed, root),
        _ => throw new NotSupportedException($"No words are known for a {setting.GetType().Name}."),
    };

    private static IEnumerable<KeyEdit> Spring(Car changed, AxleEnd end, Node root)
    {
        var group = changed.At(end).Spring.Swap is null ? "spring" : "bought-spring";
        var spring = root.At(end.Key(), group);
        if (changed.At(end).Spring.Law is GasSpring gas)
        {
            yield return KeyEdit.Put([end.Key(), group, "gas", "volume"], $"{Rounded.Text(1000.0 * gas.Volume.Si)} L");
            yield break;
        }

        if (changed.At(end).Spring.Law is TableSpring table)
        {
            yield return KeyEdit.Put([end.Key(), group, "table"], TableRows.Of(table.Table, "mm", 1e-3));
            yield break;
        }

        // A rate takes the place of the dimensions that it was worked out from; a torsion bar's is felt at the wheel.
        foreach (var dimensions in new[] { "coil", "leaf", "torsion-bar" }.Where(key => spring?.At(key) is not null))
        {
            yield return KeyEdit.Remove([end.Key(), group, dimensions]);
        }

        var rate = ((LinearSpring)changed.At(end).Spring.Law).Rate.Si / 1000.0;
        yield return KeyEdit.Put(
            [end.Key(), group, spring?.At("wheel-rate") is not null || spring?.At("torsion-bar") is not null ? "wheel-rate" : "rate"],
            $"{Rounded.Text(rate)} N/mm");
    }

    private static IEnumerable<KeyEdit> Damper(Car changed, AxleEnd end)
    {
        string[] Path(string key) => [end.Key(), "damper", key];
        switch (changed.At(end).Damper.Law)
        {
            case RatioDamper ratio:
                yield return KeyEdit.Put(Path("damping-ratio"), Rounded.Text(ratio.Ratio.Si));
                break;
            case TableDamper table:
                yield return KeyEdit.Put(Path("bump"), TableRows.Of(table.Bump, "m/s", 1.0));
                yield return KeyEdit.Put(Path("rebound"), TableRows.Of(table.Rebound, "m/s", 1.0));
                break;
            case var other:
                throw new NotSupportedException($"No words are known for a {other.GetType().Name}.");
        }
    }

    private static IEnumerable<KeyEdit> Stop(Car changed, AxleEnd end) => changed.At(end).BumpStop is { } stop
        ? [KeyEdit.Put([end.Key(), "bump-stop", "clearance"], $"{Rounded.Text(Math.Round(In.Millimetres.Of(stop.Clearance.Si), 4))} mm")]
        : [];

    private static IEnumerable<KeyEdit> Link(Car changed, Node root)
    {
        if (changed.Interconnection is not ElasticLink link)
        {
            return root.At("interconnection") is null ? [] : [KeyEdit.Remove(["interconnection"])];
        }

        var rate = KeyEdit.Put(["interconnection", "elastic", "rate"], $"{Rounded.Text(link.Rate.Si / 1000.0)} N/mm");
        return link.Damping.Si == 0.0 && root.At("interconnection", "elastic", "damping") is null
            ? [rate]
            : [rate, KeyEdit.Put(["interconnection", "elastic", "damping"], $"{Rounded.Text(link.Damping.Si)} N s/m")];
    }

    private static IEnumerable<KeyEdit> Wheelbase(Car changed, Node root)
    {
        yield return KeyEdit.Put(["wheelbase"], $"{Rounded.Text(changed.Wheelbase.Si)} m");
        if (changed.Body.PitchInertia is { } inertia)
        {
            if (root.At("body", "pitch-index") is not null)
            {
                yield return KeyEdit.Remove(["body", "pitch-index"]);
            }

            yield return KeyEdit.Put(["body", "pitch-inertia"], $"{Rounded.Text(inertia.Si)} kg m2");
        }

        foreach (var seat in changed.Seats)
        {
            yield return KeyEdit.Put(["seats", seat.Name, "behind-front-axle"], $"{Rounded.Text(Math.Round(seat.BehindFrontAxle.Si, 6))} m");
        }

        foreach (var state in changed.LoadStates.Where(state => LoadRows.HasPlaces(root, state.Name)))
        {
            yield return KeyEdit.Put(["loads", state.Name], LoadRows.Of(root, state));
        }
    }

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
