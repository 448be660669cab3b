using Heaveline.Cars;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Yaml;

namespace Heaveline.Web.Pages.Garages;

/// <summary>A sheet as its file would be read: the car, what is refused of it and what looks like a slip, each at its number.</summary>
internal sealed record SheetReading
{
    /// <summary>Key of what the car is called, beside those of <see cref="GarageSheet.Lines"/>.</summary>
    public const string Named = "name";

    private static readonly string[] Ends = ["front", "rear"];

    /// <summary>The car; null while anything is refused or missing.</summary>
    public required Car? Car { get; init; }

    /// <summary>What is refused, by the number's key, in words.</summary>
    public required IReadOnlyDictionary<string, string> Refusals { get; init; }

    /// <summary>What is possible and not plausible, by the number's key, in words.</summary>
    public required IReadOnlyDictionary<string, string> Slips { get; init; }

    /// <summary>What is refused or looks like a slip and belongs to no number of the sheet.</summary>
    public required IReadOnlyList<string> Elsewhere { get; init; }

    /// <summary>How many values of the file say that they are estimated.</summary>
    public required int Estimated { get; init; }

    /// <summary>Whether anything is refused.</summary>
    public bool IsRefused { get; private init; }

    /// <summary>The sheet's file, read as any other car file.</summary>
    public static SheetReading Of(GarageSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        if (sheet.Text is not { } text)
        {
            return new SheetReading
            {
                Car = null, Refusals = sheet.Refusals, Slips = new Dictionary<string, string>(), Elsewhere = [], Estimated = 0,
                IsRefused = sheet.Refusals.Count > 0,
            };
        }

        var reading = CarFile.Read(new SourceText("sheet.yaml", text));
        var keys = KeysByLine(sheet, reading.Root);
        var refusals = ByKey(reading.Refusals.Select(one => (one.Line, $"{one.Message} {one.Advice}")), keys);
        var slips = ByKey(reading.Warnings.Select(one => (one.Line, $"{one.Message} {one.Advice}")), keys);
        return new SheetReading
        {
            Car = reading.Value,
            Refusals = refusals.Where(one => one.Key.Length > 0).ToDictionary(one => one.Key, one => one.Value),
            Slips = slips.Where(one => one.Key.Length > 0).ToDictionary(one => one.Key, one => one.Value),
            Elsewhere = [.. new[] { refusals, slips }.Select(all => all.GetValueOrDefault("")).OfType<string>()],
            Estimated = UnmeasuredLines.In(text).Count,
            IsRefused = reading.Value is null,
        };
    }

    // What is said of both axles alike is said once.
    private static Dictionary<string, string> ByKey(IEnumerable<(int Line, string Words)> said, Dictionary<int, string> keys) => said
        .GroupBy(one => keys.GetValueOrDefault(one.Line, ""))
        .ToDictionary(one => one.Key, one => string.Join(' ', one.Select(words => words.Words).Distinct()));

    // A number of both axles stands in the file twice.
    private static Dictionary<int, string> KeysByLine(GarageSheet sheet, Node? root)
    {
        var keys = new Dictionary<int, string> { [1] = Named };
        foreach (var line in GarageSheet.Lines)
        {
            foreach (var end in Ends)
            {
                string[] path = line.Path[0] == "front" && line.Doubts.Count > 1 ? [end, .. line.Path.Skip(1)] : [.. line.Path];
                string[] atWheel = [.. path.SkipLast(1), "wheel-rate"];
                if ((root?.At(path) ?? (path[^1] == "rate" && path[1] == "spring" ? root?.At(atWheel) : null)) is { } node)
                {
                    keys[node.Place.Line] = sheet.Estimates.ContainsKey(line.Key) ? Behind(line.Key, root) : line.Key;
                }
            }
        }

        return keys;
    }

    // What was typed that an estimate follows from: it is to blame where the estimate cannot be.
    private static string Behind(string key, Node? root)
    {
        double Weight(string axle) => root?.At("weighing", axle) is { } node
            ? GarageSheet.Lines.First(line => line.Key == axle).Field.Quantity!.Split(node.Text).Si
            : 0.0;
        return key switch
        {
            "front-spring" => GarageSheet.FrontMass,
            "rear-spring" => GarageSheet.RearMass,
            "unsprung" => Weight(GarageSheet.FrontMass) > Weight(GarageSheet.RearMass) ? GarageSheet.FrontMass : GarageSheet.RearMass,
            _ => key,
        };
    }
}
