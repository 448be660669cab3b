using Heaveline.Answers;
using Heaveline.Films;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The numbers of a headlamp's rhythm.</summary>
public static class FlashTable
{
    private const string Page = "theory/films.md";

    private static readonly Measure<LampFlash> Rhythm = new(
        "flash-rhythm", "flashes a second", In.Hertz, 2, f => f.Rhythm.Value, "Frequency of the dying swing in the logarithm of the lamp's "
            + "brightness.")
    { Page = Page };

    private static readonly Measure<LampFlash> Left = new(
        "flash-left", "left after one flash", In.Percent, 0, f => f.LeftAfterOne.Value, "Its size one flash later over that now.") { Page = Page };

    /// <summary>All that the table holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [Rhythm, Left];

    /// <summary>The table.</summary>
    public static FactTable Of(LampFlash flash)
    {
        ArgumentNullException.ThrowIfNull(flash);
        var table = new FactTable("The lamp (90 %)", ["found", "from", "to"]);
        table.Add(Rhythm, [flash.Rhythm.Value, flash.Rhythm.Low, flash.Rhythm.High]);
        return table.Add(Left, [flash.LeftAfterOne.Value, flash.LeftAfterOne.Low, flash.LeftAfterOne.High]);
    }
}
