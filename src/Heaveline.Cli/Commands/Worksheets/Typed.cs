using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands.Worksheets;

/// <summary>Reads the amounts of a worksheet's command line, or stops with what is wrong.</summary>
internal static class Typed
{
    public static Amount<T> Amount<T>(string option, string words)
        where T : struct, IDimension
    {
        var parsed = QuantityText.Parse<T>(words);
        return parsed.IsRead ? parsed.Amount : throw Wrong(option, words, $"{parsed.Refusal!.Message} {parsed.Refusal.Advice}");
    }

    public static Amount<T>? Maybe<T>(string option, string? words)
        where T : struct, IDimension => words is null ? null : Amount<T>(option, words);

    /// <summary>A force, or the mass that a scale shows under it.</summary>
    public static Amount<Force> Force(string option, string words)
    {
        var mass = QuantityText.Parse<Mass>(words);
        // A pound on a scale is the same force whether read as mass or force; what is no force at all is told as one.
        return QuantityText.Parse<Force>(words).IsRead || !mass.IsRead
            ? Amount<Force>(option, words)
            : new Amount<Force>(mass.Amount.Si * Gravity.Standard, new Doubt(mass.Amount.Doubt.HalfWidth * Gravity.Standard));
    }

    /// <summary>Parts of a text between commas.</summary>
    public static string[] Parts(string option, string words, int count)
    {
        var parts = words.Split(',', StringSplitOptions.TrimEntries);
        return parts.Length == count ? parts : throw Wrong(option, words, $"It has {parts.Length} values between commas; it must have {count}.");
    }

    private static Stopped Wrong(string option, string words, string why) => new($"heaveline: {option} '{words}': {why}", ExitCode.WrongUsage);
}
