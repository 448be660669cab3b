using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Swings counted over a time.</summary>
public static class BounceStudy
{
    private static readonly UsualReading UsualSwings = UsualReading.Of<Plain>("1", "100");

    private static readonly UsualReading UsualTime = UsualReading.Of<Time>("0.3 s", "200 s");

    private static readonly UsualReading UsualMass = UsualReading.Of<Mass>("40 kg", "6000 kg");

    private static readonly UsualReading UsualTyres = UsualReading.Of<Stiffness>("50 N/mm", "6000 N/mm");

    private static readonly Choice Swings = SheetQuestion.Needed("swings", "Whole swings counted, down and up again.", "NUMBER") with
    { Columns = [new("swings", "")] };

    private static readonly Choice Took = SheetQuestion.Needed("time", "Time they took.", "TIME") with
    { Columns = [new("time", "s")] };

    private static readonly Choice Bounces = SheetQuestion.Choice("mass", "Mass that bounces, to tell a locked suspension.", "MASS") with
    { Columns = [new("mass", "kg", "lb")] };

    private static readonly Choice Tyres = SheetQuestion.Choice("tyres", "Rate of all tyres under it together.", "RATE") with
    { Columns = [new("rate", "N/mm", "lbf/in")] };

    /// <summary>The question as a command offers it.</summary>
    public static Question<BounceAsked, SheetAnswer> Question { get; } = SheetQuestion.Of<BounceAsked>(
        "bounce",
        """
        Frequency from counted swings, and whether friction had locked the suspension.

        Example:
          heaveline worksheet bounce --swings 5 --time "3.9 s" --mass "1360 kg" --tyres "840 N/mm"
        """,
        [Swings, Took, Bounces, Tyres],
        Read,
        Run);

    /// <summary>Works the count out.</summary>
    /// <param name="asked">The count.</param>
    /// <exception cref="RefusedValueException">Count, time, mass or rate lies outside its range.</exception>
    public static SheetAnswer Run(BounceAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var sheet = BounceSheet.Of(asked.Swings, asked.Time, asked.Mass, asked.Tyres);
        return new SheetAnswer
        {
            Sheet = Question.Word,
            Table = new SheetTable("Bounce test")
                .Add("frequency", "frequency", "Hz", "F2", sheet.Frequency)
                .Add("locked", "on the tyres alone", "Hz", "F2", sheet.Locked)
                .Facts,
            Notes = [.. sheet.Notes],
            From = FormattableString.Invariant($"{asked.Swings.Si:0.##} swings in {asked.Time.Si:0.##} s"),
        };
    }

    private static BounceAsked? Read(SheetReader reader)
    {
        var (swings, time) = (reader.Amount<Plain>(Swings, UsualSwings), reader.Amount<Time>(Took, UsualTime));
        var (mass, tyres) = (reader.Maybe<Mass>(Bounces, UsualMass), reader.Maybe<Stiffness>(Tyres, UsualTyres));
        return reader.IsRefused ? null : new BounceAsked { Typed = reader.Typed, Swings = swings, Time = time, Mass = mass, Tyres = tyres };
    }
}
