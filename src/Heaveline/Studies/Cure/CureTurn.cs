using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>One setting of a car turned from what is described to another value.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Scale">Its slider for the car as described.</param>
/// <param name="Value">The value, in the slider's unit.</param>
/// <param name="Step">How many of its steps it is away from what is described, 1 to <see cref="Steps"/>.</param>
internal sealed record CureTurn(Setting Setting, SettingScale Scale, double Value, int Step)
{
    /// <summary>In how many steps a setting is turned to the end of its slider.</summary>
    public const int Steps = 12;

    /// <summary>Whether it is turned up.</summary>
    public bool IsUp => Value > Scale.Described;

    /// <summary>What is done, without how far ("softer front spring"); one for each setting and way.</summary>
    public string Act => Setting switch
    {
        SpringSetting spring => $"{(IsUp ? "stiffer" : "softer")} {spring.End.Key()} spring",
        DampingSetting damping => $"{(IsUp ? "stronger" : "weaker")} {damping.End.Key()} damping",
        StopSetting stop => $"{(IsUp ? "more" : "less")} {stop.End.Key()} bump-stop clearance",
        LinkSetting link => (Scale.Described, link.IsDamper) switch
        {
            (0.0, false) => "a spring that joins front and rear on each side",
            (0.0, true) => "a damper that joins front and rear on each side",
            (_, false) => $"{(IsUp ? "stiffer" : "softer")} spring that joins front and rear",
            (_, true) => $"{(IsUp ? "stronger" : "weaker")} damper that joins front and rear",
        },
        _ => throw new NotSupportedException($"No words are known for a {Setting.GetType().Name}."),
    };

    /// <summary>How far ("from 24 N/mm to 18.5 N/mm").</summary>
    public string Reach => Scale.Unit.StartsWith('×') || Scale.Described == 0.0
        ? Amount
        : $"from {Text(Told(Scale.Described))} {Scale.Unit} to {Amount}";

    /// <summary>The value with its unit.</summary>
    public string Amount => $"{Text(Value)} {Scale.Unit}";

    /// <summary>
    /// The ways in which a car's settings can be turned: springs, dampers and interconnection both ways, bump stops to more clearance. Its wheelbase
    /// is what it is.
    /// </summary>
    /// <param name="car">The car as described.</param>
    /// <returns>Each way, its steps in order.</returns>
    public static IReadOnlyList<ImmutableArray<CureTurn>> Ways(Car car) =>
    [
        .. from setting in Settings.All(inertiaGrows: false)
           where setting is not WheelbaseSetting
           let scale = setting.ScaleOf(car)
           where scale is not null
           from end in setting is StopSetting ? new[] { scale.To } : [scale.From, scale.To]
           let way = Way(setting, scale, end)
           where !way.IsEmpty
           select way,
    ];

    /// <summary>Halfway between a turn that is allowed and a farther one; null where no step of the slider lies between.</summary>
    /// <param name="allowed">The nearer one; null: as described.</param>
    /// <param name="refused">The farther one.</param>
    public static CureTurn? Between(CureTurn? allowed, CureTurn refused)
    {
        var (from, to) = (allowed?.Value ?? refused.Scale.Described, refused.Value);
        var middle = refused.Scale.OnStep(0.5 * (from + to));
        return middle == from || middle == to ? null : refused with { Value = middle };
    }

    private static ImmutableArray<CureTurn> Way(Setting setting, SettingScale scale, double end)
    {
        // As many times as much with each step, where there is something to multiply: a rate or a force counts by its ratio.
        var (from, isRatio) = (scale.Described, scale.Described > 0.0 && end > 0.0 && setting is not StopSetting);
        double At(int step) => isRatio
            ? from * Math.Pow(end / from, step / (double)Steps)
            : from + ((end - from) * step / Steps);
        return
        [
            .. Enumerable.Range(1, Steps).Select(step => new CureTurn(setting, scale, scale.OnStep(At(step)), step))
                .Where(turn => turn.Value != from && turn.IsUp == (end > from)).DistinctBy(turn => turn.Value),
        ];
    }

    // A rate made of a wire has as many digits as one likes: told are those of the slider's step, at least three.
    private double Told(double value) =>
        Math.Round(value, Math.Clamp(Math.Max(Scale.Decimals, 2 - (int)Math.Floor(Math.Log10(Math.Abs(value)))), 0, 15));

    private static string Text(double value) => Rounded.Text(Math.Round(value, 5));
}
