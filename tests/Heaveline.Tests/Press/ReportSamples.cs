using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Studies;

namespace Heaveline.Tests.Press;

/// <summary>Reports for the press's tests.</summary>
internal static class ReportSamples
{
    /// <summary>A name that would do harm where a page forgets to escape it.</summary>
    public const string Attack = "<script>alert(1)</script>\"'&--><img src=x onerror=alert(2)>";

    public const string Digest = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";

    /// <summary>Every kind of block, every text the given one.</summary>
    public static Report Everywhere(string text) => new()
    {
        Title = text,
        Author = text,
        Date = text,
        Program = text,
        Parts =
        [
            new ReportPart
            {
                Heading = text,
                Blocks =
                [
                    Paragraph.Of(text),
                    Points.Of([text, text]),
                    Points.Of([text]) with { Numbered = true },
                    Caution.Of(text),
                    new Typed { Line = text },
                    Tabulated.Of(new FactTable(text, [text]).Add("key", text, text, "F1", [1.0]), text),
                    Illustration.Of(Bars(text)),
                    new Verbatim { Input = new InputText { Name = text, Text = text, Sha256 = Digest } },
                ],
                Sources = [Sources.Axes],
            },
        ],
    };

    public static Figure Bars(string text) => new()
    {
        Title = text,
        AltText = text,
        Caption = text,
        SignNote = text,
        Size = FigureSize.Page,
        Panels =
        [
            new CategoryPanel
            {
                Title = text,
                Value = new Axis { Label = text, Unit = text },
                Categories = [new Category { Name = text, Values = [new CategoryValue { Value = 1.0, Low = 0.5, High = 1.5, Series = text }] }],
            },
        ],
    };

    /// <summary>A report computed from one of the tests' cars.</summary>
    public static ReportAsked Of(Car car, params ReadOnlySpan<PartKind> parts) => new()
    {
        Title = "Test",
        Program = "Heaveline test",
        Words = new Given([(ReportStudy.Cars.Name, "car.yaml"), (ReportStudy.Out.Name, "r.html")]),
        Cars = [Usual(car)],
        Road = Heaveline.Files.Roads.NamedRoads.All["village-hump"],
        Speed = 12.0,
        Speeds = [8.0, 16.0],
        Draws = 40,
        Parts = [.. parts],
    };

    /// <summary>A car under its first load.</summary>
    public static LoadedCar Usual(Car car) => LoadedCar.Of(car, LoadedCar.UsualLoad(car));
}
