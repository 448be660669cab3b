using Heaveline.Quantities;
using Heaveline.Tuning;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>The finding of a view as a sentence that can stand alone: with car, road, speed, load, what is set and what it is held against.</summary>
internal static class PassCopy
{
    /// <summary>The sentence.</summary>
    /// <param name="view">The view.</param>
    /// <param name="verdict">The verdict on it.</param>
    public static string Of(PassView view, PassVerdict verdict)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(verdict);
        var values = view.State.Values;
        string[] set =
        [
            .. from setting in Settings.All(view.State.InertiaGrows)
               where values.ContainsKey(setting.Key)
               let scale = setting.ScaleOf(view.Described)
               where scale is not null
               select $"{FirstLetter.Lowered(setting.Label)} {Rounded.Text(values[setting.Key])} {scale.Unit}",
            .. values.TryGetValue(Luggage.Key, out var more) ? [$"{Rounded.Text(more)} {Luggage.Scale.Unit} more luggage"] : Array.Empty<string>(),
        ];
        var against = view.Before is not { } before ? ""
            : view.State.Beside is null ? " Held against the car as described." : $" Held against {before.Name}.";
        return $"{PassWords.Heading(view)}{(set.Length > 0 ? $", set: {string.Join("; ", set)}" : "")}: {verdict.Headline}{against}";
    }
}
