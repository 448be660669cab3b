using Heaveline.Drives.Identification;
using Heaveline.Measures;

namespace Heaveline.Figures;

/// <summary>The car card of a drive: each number with its interval, beside it the car file's value and what was thought before.</summary>
public static class DriveCarFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="car">The car, with estimates.</param>
    /// <param name="measures">What each number is.</param>
    /// <param name="file">The car file's values; null where there is none.</param>
    /// <param name="holdsFor">The motion that it holds for, in words.</param>
    public static Figure Of(CarFromDrive car, Func<CarNumber, Measure> measures, Func<CarNumber, double?> file, string holdsFor)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(measures);
        ArgumentNullException.ThrowIfNull(file);
        CategoryPanel Panel(string title, Axis axis, params CarNumber[] numbers) => new()
        {
            Title = title,
            Value = axis,
            Style = CategoryStyle.Dots,
            Categories = [.. numbers.Select(n => Row(car, n, measures(n).Name, file(n)))],
        };
        return new Figure
        {
            Title = car.IsBelieved ? "The car that moves most like this drive" : "Not believed: the car that moves most like this drive",
            AltText = "Dots with intervals of ride frequencies, damping ratios, frequency ratio and dynamic index: "
                + "found in the drive, thought before it, and the car file's.",
            Caption = $"Intervals hold 90 %, {holdsFor}; they are not intervals of springs and dampers. "
                + (car.IsBelieved ? "" : "The drive is refused: no interval is promised. ")
                + "Grey: what was thought before the drive.",
            Size = FigureSize.Page,
            Panels =
            [
                Panel("Frequencies", new Axis { Label = "frequency", Unit = "Hz" }, CarNumber.FrontFrequency, CarNumber.RearFrequency,
                    CarNumber.FirstModeFrequency, CarNumber.SecondModeFrequency),
                Panel("Damping ratios", new Axis { Label = "damping ratio", Unit = "–" }, CarNumber.FrontDamping, CarNumber.RearDamping,
                    CarNumber.FirstModeDamping, CarNumber.SecondModeDamping),
                Panel("Ratio and index", new Axis { Label = "ratio", Unit = "–" }, CarNumber.FrequencyRatio, CarNumber.PitchIndex),
            ],
        };
    }

    private static Category Row(CarFromDrive car, CarNumber number, string name, double? file)
    {
        var e = car.Of(number)!;
        List<CategoryValue> values =
        [
            new CategoryValue
            {
                Value = e.Value,
                Low = car.IsBelieved && e.IsSaid ? e.Low : null,
                High = car.IsBelieved && e.IsSaid ? e.High : null,
                Series = "this drive",
                Ink = car.IsBelieved && e.IsSaid ? Ink.First : Ink.Fifth,
            },
        ];
        if (file is { } value)
        {
            values.Add(new CategoryValue { Value = value, Series = "car file", Ink = Ink.Second });
        }

        values.Add(new CategoryValue
        {
            Value = Math.Sqrt(e.KnownLow * e.KnownHigh), Low = e.KnownLow, High = e.KnownHigh, Series = "thought before", Ink = Ink.Fifth,
        });
        return new Category { Name = name, Values = [.. values] };
    }
}
