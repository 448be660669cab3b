using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>Two travels measured over one movement of the wheel: "31 mm for 50 mm at the wheel".</summary>
/// <param name="Element">How far the spring, damper or link moved, m.</param>
/// <param name="Wheel">How far the wheel moved, m.</param>
internal sealed record Travels(Amount<Length> Element, Amount<Length> Wheel)
{
    /// <summary>What is wanted, with its article.</summary>
    public const string Words = "a pair of travels (31 mm for 50 mm at the wheel)";

    /// <summary>For editors.</summary>
    public const string Pattern = @"^.*[0-9].*\sfor\s.*[0-9].*$";

    private const string Between = " for ";
    private const string End = " at the wheel";

    /// <summary>Reads the phrase; the words "at the wheel" may be left out.</summary>
    public static (Travels Value, QuantityRefusal? Refusal) Parse(string text)
    {
        var middle = text.IndexOf(Between, StringComparison.Ordinal);
        if (middle < 0)
        {
            return (new Travels(default, default), new QuantityRefusal(
                0,
                Math.Max(1, text.Length),
                $"\"{text}\" is not two travels.",
                "Write how far it moved and for which travel of the wheel: 31 mm for 50 mm at the wheel."));
        }

        var element = QuantityText.Parse<Length>(text[..middle]);
        if (element.Refusal is { } first)
        {
            return (new Travels(default, default), first);
        }

        var from = middle + Between.Length;
        var rest = text.EndsWith(End, StringComparison.Ordinal) ? text[from..^End.Length] : text[from..];
        var wheel = QuantityText.Parse<Length>(rest);
        return (new Travels(element.Amount, wheel.Amount), wheel.Refusal is { } second ? second with { Start = from + second.Start } : null);
    }
}
