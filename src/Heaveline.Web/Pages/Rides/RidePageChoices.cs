using Heaveline.Studies;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Rides;

/// <summary>What can be chosen on the page of the ride.</summary>
internal static class RidePageChoices
{
    /// <summary>The road by this word is one of the reader's own density.</summary>
    public const string OwnDensity = CurrentCar.OwnDensity;

    /// <summary>Before the letter of a class.</summary>
    public const string ClassWord = CurrentCar.ClassWord;

    public static Choice Beside { get; } = Choices.Car with { Name = "beside", Says = "The car beside it." };

    public static Choice Seat { get; } = new()
    {
        Name = "seat",
        Kind = ChoiceKind.Seat,
        Says = "The seat of the first car. Without it: its first.",
        FirstOfCar = true,
    };

    public static Choice Road { get; } = Choices.Road with
    {
        Says = "A class (class-C), density for one of the reader's own, or a road's name.",
        Usual = "class-C",
    };

    public static Choice Density { get; } = new()
    {
        Name = "density",
        Kind = ChoiceKind.Number,
        Says = "Density at 0.1 cycles/m of the reader's own road, 1e-6 m³.",
        Usual = "256",
        Range = (0.01, 1e6),
        WordIs = "density in 1e-6 m³",
    };

    public static Choice Waviness { get; } = new()
    {
        Name = "waviness",
        Kind = ChoiceKind.Number,
        Says = "Waviness of the random road.",
        Usual = "2",
        Range = (0.5, 5.0),
        WordIs = "waviness",
    };

    public static Choice At { get; } = Choices.Speed with { Name = "at", Says = "Speed of the spectra.", Usual = "80 km/h" };

    public static IReadOnlyList<Choice> All { get; } =
        [Choices.Car, Beside, Choices.Load, Seat, Road, Density, Waviness, Choices.From, Choices.To, At, RideStudy.InTime];
}
