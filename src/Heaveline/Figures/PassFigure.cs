using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Figures;

/// <summary>The figure of one pass: everything that happened, on one time axis, from the road up.</summary>
public static class PassFigure
{
    /// <summary>
    /// The figure of a pass, page wide: road under the wheels, heights over both axles, pitch, pitch acceleration, roll where the car rolls, travel
    /// with the stops, tyre load where a wheel comes near to leaving the road; hit and settling shaded.
    /// </summary>
    /// <param name="pass">The pass.</param>
    /// <param name="measures">Its numbers.</param>
    /// <exception cref="RefusedValueException">The pass has no two good samples.</exception>
    public static Figure Of(Pass pass, PassMeasures measures)
    {
        ArgumentNullException.ThrowIfNull(pass);
        ArgumentNullException.ThrowIfNull(measures);
        Drawn(pass);
        var panels = PassPanels.Of(pass, measures);
        return new Figure
        {
            Title = $"{pass.Model.Car.Name} over {Named(pass.Road.MetBy(pass.Model.Rolls))} at {Printed.Speed(pass.Speed)}",
            AltText = PassCaption.AltText(pass, measures, panels.Length),
            Caption = PassCaption.Of(pass, measures),
            SignNote = $"{ReaderSigns.Pitch} Heights and pitch from the standing car; wheel travel from the empty car.",
            Size = FigureSize.Page,
            SharedX = EventBands.TimeOf(pass),
            SharedBands = EventBands.Of(measures),
            Panels = panels,
        };
    }

    /// <summary>
    /// A road's name in a sentence: "a plank". A measured one has the name that its file gave it, "stone blocks", and takes no article.
    /// </summary>
    internal static string Named(Road road) => road.Kind != RoadKind.Measured && road.Name.Length > 0 && char.IsLower(road.Name[0])
        ? (road.Name[0] is 'a' or 'e' or 'i' or 'o' ? "an " : "a ") + road.Name
        : road.Name;

    /// <summary>Refuses a pass that broke off before there was anything to draw.</summary>
    internal static void Drawn(Pass pass)
    {
        if (pass.Count < 2)
        {
            throw new RefusedValueException(
                "pass",
                $"broken off after {pass.Count} good samples",
                "at least 2 samples long",
                pass.OutcomeSentence.Length > 0 ? pass.OutcomeSentence : "Record longer.");
        }
    }
}
