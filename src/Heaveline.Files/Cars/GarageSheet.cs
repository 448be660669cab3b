using System.Text;
using Heaveline.Files.Editing;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>
/// A car from one page of numbers: what was measured as it was typed, all else estimated with a wide doubt, and every estimate told at the end of its
/// line in the file (<see cref="UnmeasuredLines"/>). Wheelbase and what the scales read are never estimated.
/// </summary>
public sealed class GarageSheet
{
    /// <summary>Key of the wheelbase.</summary>
    public const string Wheelbase = "wheelbase";

    /// <summary>Key of what both front wheels weigh.</summary>
    public const string FrontMass = "front";

    /// <summary>Key of what both rear wheels weigh.</summary>
    public const string RearMass = "rear";

    /// <summary>Key of the front spring's travel.</summary>
    public const string FrontMoves = "front-moves";

    /// <summary>Key of the rear spring's travel.</summary>
    public const string RearMoves = "rear-moves";

    /// <summary>Key of what the car looks like, which is asked beside the numbers.</summary>
    public const string BodyStyle = "body-style";

    /// <summary>Behind how far a spring moves, over which travel of the wheel.</summary>
    public const string Jack = " for 50 mm at the wheel";

    private const string Practice = "common practice, no source";
    private const string Jacked = "for 50 mm at the wheel, jacked";
    private const string Gap = "wheel travel; plasticine or a cable tie";
    private readonly IReadOnlyDictionary<string, string> typed;
    private readonly IReadOnlyDictionary<string, string> readings;
    private readonly ReaderUnits units;
    private readonly Dictionary<string, string> refused = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SheetEstimate> estimates = new(StringComparer.Ordinal);

    private GarageSheet(
        string name, IReadOnlyDictionary<string, string> typed, ReaderUnits units, IReadOnlyDictionary<string, string> readings)
    {
        this.readings = readings;
        this.units = units;
        this.typed = typed.Where(one => one.Value.Trim().Length > 0)
            .ToDictionary(one => one.Key, one => one.Value.Trim(), StringComparer.Ordinal);
        foreach (var line in Lines.Where(line => this.typed.ContainsKey(line.Key)))
        {
            if (Refused(line) is { } words)
            {
                refused[line.Key] = words;
            }
        }

        if (this.typed.TryGetValue(BodyStyle, out var style) && !Styles.Contains(style))
        {
            refused[BodyStyle] = $"'{style}' is no body style; there are {string.Join(", ", Styles)}.";
        }

        Missing = [.. Lines.Where(line => line.IsNeeded && !this.typed.ContainsKey(line.Key)).Select(line => line.Key)];
        Estimate();
        Text = refused.Count == 0 && Missing.Count == 0 ? Written(name) : null;
    }

    /// <summary>The numbers of the sheet, in the order of measuring.</summary>
    public static IReadOnlyList<SheetLine> Lines { get; } =
    [
        new(Wheelbase, "Hub to hub", "tape and plumb line along the sill", ["wheelbase"], ["wheelbase"]),
        new(FrontMass, "Front wheels on the scale", "both together, tank known, nobody aboard", ["weighing", "front"], Weights("front")),
        new(RearMass, "Rear wheels on the scale", "both together, in the same state", ["weighing", "rear"], Weights("rear")),
        new("track", "Between the tyres' middles", "across the car, either axle", ["front", "track"], Both("track")),
        new("front-spring", "Front spring", "one of them, as printed on it", ["front", "spring", "rate"], ["front spring rate"]),
        new("rear-spring", "Rear spring", "one of them, as printed on it", ["rear", "spring", "rate"], ["rear spring rate"]),
        new(FrontMoves, "Front spring moves", Jacked, ["front", "spring", "moves"], ["front spring motion ratio"]),
        new(RearMoves, "Rear spring moves", Jacked, ["rear", "spring", "moves"], ["rear spring motion ratio"]),
        new("front-gap", "Front gap to the bump stop", Gap, ["front", "bump-stop", "clearance"], ["front bump stop clearance"]),
        new("rear-gap", "Rear gap to the bump stop", Gap, ["rear", "bump-stop", "clearance"], ["rear bump stop clearance"]),
        new("damping", "Dampers, share of critical",
            "a swing filmed beside a ruler; to try dampers from a list, or stops without stop-per-wheel, give a rig's curve in the full form",
            ["front", "damper", "damping-ratio"], Both("damping ratio")),
        new("unsprung", "Wheels, hubs, brakes of one axle", "with half of each arm and spring", ["front", "unsprung-mass"], Both("unsprung mass")),
        new("tyre", "Stiffness of one tyre", "load against sinking, at its pressure", ["front", "tyre", "rate"], Both("tyre rate")),
        new("height", "Height of the centre of gravity", "tilt test", ["body", "centre-of-gravity-height"], ["height of the centre of gravity"]),
        new("index", "Pitch index", "how far the mass is spread: k² over both axle distances", ["body", "pitch-index"], ["dynamic index"]),
    ];

    /// <summary>What is refused, by its key, in words.</summary>
    public IReadOnlyDictionary<string, string> Refusals => refused;

    /// <summary>Keys of numbers that must be measured and are not there.</summary>
    public IReadOnlyList<string> Missing { get; }

    /// <summary>What is estimated, by its key: the value as it stands in the file, and by which rule.</summary>
    public IReadOnlyDictionary<string, SheetEstimate> Estimates => estimates;

    /// <summary>How many of the numbers are measured.</summary>
    public int Measured => Lines.Count(line => typed.ContainsKey(line.Key));

    /// <summary>The car file; null while something is refused or missing.</summary>
    public string? Text { get; }

    /// <summary>A sheet.</summary>
    /// <param name="name">What the car is called.</param>
    /// <param name="typed">Whole quantities by the keys of <see cref="Lines"/>; blank or left out what was not measured.</param>
    /// <param name="units">The units of whoever reads what is refused; null: metric. What was typed stays as it was typed.</param>
    /// <param name="readings">From what a worksheet worked out numbers that were typed, in words, by their keys; null: none.</param>
    public static GarageSheet Of(
        string name, IReadOnlyDictionary<string, string> typed, ReaderUnits? units = null, IReadOnlyDictionary<string, string>? readings = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(typed);
        return new GarageSheet(name, typed, units ?? ReaderUnits.Metric, readings ?? new Dictionary<string, string>());
    }

    private static IReadOnlyList<string> Styles => CarFile.Form.At(BodyStyle)!.Words;

    private static string[] Both(string what) => [$"front {what}", $"rear {what}"];

    private static string[] Weights(string end) => [$"{end} left weight", $"{end} right weight"];

    // What a bench, or a car file, says of both travels stands in the box as it is.
    private bool HasBoth(string key) =>
        key is FrontMoves or RearMoves && typed.TryGetValue(key, out var text) && text.Contains(" for", StringComparison.Ordinal);

    private string? Refused(SheetLine line)
    {
        if (HasBoth(line.Key))
        {
            var (travels, wrong) = Travels.Parse(typed[line.Key]);
            return wrong is not null ? $"{FirstLetter.Raised(wrong.Message)} {wrong.Advice}"
                : travels.Element.Si / travels.Wheel.Si is > 0.0 and <= MotionWords.Steepest && travels.Wheel.Si > 0.0 ? null
                : $"{typed[line.Key]} cannot be; "
                    + FormattableString.Invariant($"the spring moves above 0 and at most {MotionWords.Steepest} times as far as the wheel.");
        }

        var parts = line.Field.Quantity!.Split(typed[line.Key]);
        if (parts.Refusal is { } refusal)
        {
            return $"{FirstLetter.Raised(refusal.Message)} {refusal.Advice}";
        }

        var (least, most) = (line.Field.Least, line.Field.Most);
        var isBelow = least is { } low && (parts.Si < low || (line.Field.IsOpenBelow && parts.Si <= low));
        return isBelow || parts.Si > most || parts.Si <= 0.0
            ? $"{typed[line.Key]} cannot be; it must be {units.Text(line.Field.Limit ?? "above 0")}."
            : null;
    }

    private double Si(string key) => refused.ContainsKey(key) ? double.NaN
        : Lines.First(line => line.Key == key).Field.Quantity!.Split(typed.GetValueOrDefault(key) ?? estimates[key].Value).Si;

    private bool Has(string key) => typed.ContainsKey(key);

    private void Estimate()
    {
        Guess("track", "1.50 m ± 8 cm", $"usual for a car ({Practice})");
        Guess("damping", "0.3 ± 40 %", $"usual for dampers as new ({Practice})");
        Guess("tyre", "200 N/mm ± 15 %", $"usual for a car's tyre at its pressure ({Practice})");
        var (height, of) = UsualHeight.Of(typed.GetValueOrDefault(BodyStyle));
        Guess("height", height, of);
        Guess("index", "0.998 ± 0.224", "median and spread of 204 road vehicles in a public database of inertias");
        if (Missing.Count > 0 || refused.Count > 0)
        {
            return;
        }

        var (front, rear) = (Si(FrontMass), Si(RearMass));
        Guess("unsprung", $"{Numeral.Of(0.06 * (front + rear), 0)} kg ± 15 %", $"6 % of the car's mass an axle ({Practice})");
        Guess("front-spring", Rate(front, 1.20), $"1.20 Hz on its spring ({Practice})");
        Guess("rear-spring", Rate(rear, 1.35), $"1.35 Hz on its spring ({Practice})");
        Guess(FrontMoves, "46 mm ± 4 mm", $"usual beside a front wheel ({Practice})");
        Guess(RearMoves, "42 mm ± 8 mm", $"usual for a rear arm ({Practice})");
    }

    private void Guess(string key, string value, string by)
    {
        if (!Has(key))
        {
            estimates[key] = new SheetEstimate(value, by);
        }
    }

    // The rate at the wheel that swings half of what an axle carries above its springs.
    private string Rate(double axle, double hertz)
    {
        var carried = 0.5 * Math.Max(0.2 * axle, axle - Si("unsprung"));
        return $"{Numeral.Of(In.NewtonsPerMillimetre.Of(carried * Math.Pow(2.0 * Math.PI * hertz, 2.0)), 1)} N/mm ± 30 %";
    }

    private string Written(string name)
    {
        var file = new StringBuilder();
        void Line(string text) => file.Append(text).Append('\n');
        void Value(string before, string key, string after = "")
        {
            var (value, mark) = Has(key)
                ? (typed[key], readings.TryGetValue(key, out var from) ? WorkedOutLines.Comment(from) : "")
                : (estimates[key].Value, UnmeasuredLines.Estimated(estimates[key].By));
            Line($"{before}: {ScalarText.Of(value + after, inFlow: false)}{mark}");
        }

        void Usual(string before, string value) => Line($"{before}: {value}{UnmeasuredLines.Estimated($"usual for a car ({Practice})")}");

        Line($"car: {ScalarText.Of(name.Trim(), inFlow: false)}");
        if (Has(BodyStyle))
        {
            Line($"{BodyStyle}: {typed[BodyStyle]}");
        }

        Line("note: Begun on a garage sheet. What was estimated says so at the end of its line.");
        Value("wheelbase", Wheelbase);
        Line("weighing:");
        Value("  front", FrontMass);
        Value("  rear", RearMass);
        Line("body:");
        Value("  centre-of-gravity-height", "height");
        Value("  pitch-index", "index");
        foreach (var end in new[] { "front", "rear" })
        {
            Line($"{end}:");
            Value("  track", "track");
            Value("  unsprung-mass", "unsprung");
            Line("  spring:");
            if (Has($"{end}-spring"))
            {
                Value("    rate", $"{end}-spring");
                Value("    moves", $"{end}-moves", HasBoth($"{end}-moves") ? "" : Jack);
            }
            else
            {
                Value("    wheel-rate", $"{end}-spring");
            }

            Line("  damper:");
            Value("    damping-ratio", "damping");
            if (Has($"{end}-gap"))
            {
                Line("  bump-stop:");
                Value("    clearance", $"{end}-gap");
                Usual("    rate", "45 N/mm ± 40 %");
                Usual("    exponent", "2");
            }

            Line("  tyre:");
            Value("    rate", "tyre");
        }

        Places(Usual, Line);
        return file.ToString();
    }

    // Where people sit and luggage lies, as parts of the wheelbase.
    private void Places(Action<string, string> usual, Action<string> line)
    {
        var wheelbase = Si(Wheelbase);
        string Along(double part) => $"{Numeral.Of(part * wheelbase, 2)} m ± 10 cm";
        line("seats:");
        foreach (var (seat, part, left) in new[]
        {
            ("driver", 0.50, "0.37 m"), ("front passenger", 0.50, "-0.37 m"), ("rear left", 0.80, "0.36 m"), ("rear right", 0.80, "-0.36 m"),
        })
        {
            line($"  {seat}:");
            usual("    behind-front-axle", Along(part));
            usual("    left", left);
            usual("    height", "0.54 m");
        }

        line("loads:");
        line("  driver:");
        line("    - {what: driver, mass: 75 kg, in: driver}");
        line("  four up with luggage:");
        line("    - {what: driver, mass: 75 kg, in: driver}");
        line("    - {what: front passenger, mass: 75 kg, in: front passenger}");
        line("    - {what: rear left passenger, mass: 75 kg, in: rear left}");
        line("    - {what: rear right passenger, mass: 75 kg, in: rear right}");
        line($"    - {{what: luggage, mass: 60 kg, behind-front-axle: {Numeral.Of(1.15 * wheelbase, 2)} m, height: 0.70 m}}");
    }
}
