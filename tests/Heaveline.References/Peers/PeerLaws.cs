using System.Text.Json;
using Heaveline.Elements;

namespace Heaveline.References.Peers;

/// <summary>The elements of a case, as bench/peers/README.md defines them, as a list of placed laws.</summary>
internal static class PeerLaws
{
    internal static ElementList From(JsonElement root, JsonElement[] axles, double[] y, bool isHalf)
    {
        var half = isHalf ? 0.5 : 1.0;
        Element[] Corners(Func<JsonElement, int, Element> of) => [.. Enumerable.Range(0, 4).Select(i => of(axles[i / 2], i))];
        Element?[] Perhaps(Func<JsonElement, int, Element?> of) => [.. Enumerable.Range(0, 4).Select(i => of(axles[i / 2], i))];
        double Share(int i, string what) =>
            PeerNumbers.IsSolid(axles[i / 2]) ? 0.5 * (1.0 + (axles[i / 2].Number(what) / (y[i & 2] - y[(i & 2) + 1]))) : 1.0;
        var (springs, accumulators, line) = Interconnection(root);
        return new ElementList
        {
            Springs = Corners((axle, i) => At(i, "spring", Share(i, "spring_base")) with
            {
                Ratio = Ratio(axle, "spring_ratio"),
                OnTravel = [Spring(axle, half), .. Gas(axle)],
            }),
            Dampers = Corners((axle, i) => At(i, "damper", Share(i, "damper_base")) with
            {
                Ratio = Ratio(axle, "damper_ratio"),
                OnRate = [Damper(axle.GetProperty("damper"), half)],
            }),
            BumpStops = Perhaps((axle, i) => Stop(axle, "bump_stop", i, half, +1.0, Share(i, "stop_base"))),
            ReboundStops = Perhaps((axle, i) => Stop(axle, "rebound_stop", i, half, -1.0, Share(i, "stop_base"))),
            Frictions = Perhaps((axle, i) => Friction(axle, i, half)),
            Bars = [.. axles.Select((axle, end) => At(2 * end, "anti-roll bar") with
            {
                Sight = Sight.Across(2 * end),
                OnTravel = [new StraightLaw { Slope = axle.Number("anti_roll_bar", 0.0) }],
            })],
            CommonSprings = springs,
            Accumulators = accumulators,
            Line = line,
            Resistances = line is null ? [] : FluidElement.Resistances(line),
        };
    }

    // No step is chosen from a case: what its wheels feel is not asked for.
    private static Element At(int i, string name, double share = 1.0) =>
        new() { Name = name, Cause = StepCause.None, Corner = i, Sight = Sight.Along(i, share), Felt = new double[4] };

    private static RatioCurve Ratio(JsonElement axle, string name) => axle.TryGetProperty(name, out var ratio)
        ? new(ratio[0].GetDouble(), ratio[1].GetDouble(), ratio[2].GetDouble())
        : RatioCurve.One;

    private static Law[] Gas(JsonElement axle) => axle.TryGetProperty("gas", out var gas)
        ?
        [
            new GasLaw("gas spring", 1.0)
            {
                Reference = gas.Number("force"), PerVolume = gas.Number("area_per_volume"), Exponent = gas.Number("exponent"),
            },
        ]
        : [];

    // What a volume of gas has above its pressure at rest.
    private static Law[] Volume(double pressure, double volume, double exponent) =>
    [
        new StraightLaw { Constant = -pressure },
        new GasLaw("gas volume", 1.0) { Reference = pressure, PerVolume = 1.0 / volume, Exponent = exponent },
    ];

    private static StraightLaw Spring(JsonElement axle, double half)
    {
        var spring = axle.GetProperty("spring");
        return spring.GetArrayLength() == 1
            ? new StraightLaw { Slope = half * spring[0].GetDouble() }
            : throw new NotSupportedException("A spring of powers of travel is no sum of straight pieces.");
    }

    private static StraightLaw Damper(JsonElement table, double half)
    {
        var v = table.GetProperty("velocity").EnumerateArray().Select(value => value.GetDouble()).ToArray();
        var f = table.GetProperty("force").EnumerateArray().Select(value => value.GetDouble()).ToArray();
        return StraightLaw.Through(
            0.0, half, v.AsSpan()[1..^1], [.. Enumerable.Range(0, v.Length - 1).Select(j => (f[j + 1] - f[j]) / (v[j + 1] - v[j]))]);
    }

    private static Element? Stop(JsonElement axle, string name, int i, double half, double side, double share)
    {
        if (!axle.TryGetProperty(name, out var terms))
        {
            return null;
        }

        var list = terms.EnumerateArray()
            .Select(term => (At: side * term.Number("clearance"), C: half * term.Number("coefficient"), Exponent: term.Number("exponent"))).ToArray();
        if (list is [{ Exponent: not 1.0 } curved])
        {
            return At(i, name, share) with
            {
                OnTravel =
                [
                    new PowerLaw(name) { Clearance = side * curved.At, Coefficient = curved.C, Exponent = curved.Exponent, Direction = side },
                ],
            };
        }

        Assert.All(list, term => Assert.Equal(1.0, term.Exponent));
        Hinge[] hinges = [.. list.Select(term => new Hinge(term.At, term.C))];
        return At(i, name, share) with
        {
            OnTravel =
            [
                new StraightLaw
                {
                    Constant = -list.Sum(term => term.C * term.At),
                    Opening = side > 0.0 ? hinges : [],
                    Closing = side > 0.0 ? [] : hinges,
                },
            ],
        };
    }

    private static Element? Friction(JsonElement axle, int i, double half) => axle.TryGetProperty("friction", out var friction)
        ? At(i, "friction") with { Slider = new Slider(half * friction.Number("force"), friction.Number("pre_sliding"), 1.0) }
        : null;

    private static (Element[] CommonSprings, Element[] Accumulators, SideLine? Line) Interconnection(JsonElement root)
    {
        if (root.TryGetProperty("elastic", out var link))
        {
            var law = new StraightLaw { Slope = link.Number("rate") };
            return (ElasticElement.Spring(link.Number("ratio_front"), link.Number("ratio_rear"), [law]), [], null);
        }

        if (root.TryGetProperty("gas_line", out var gas))
        {
            var laws = Volume(gas.Number("pressure"), gas.Number("volume"), gas.Number("exponent"));
            return (ElasticElement.Spring(gas.Number("area_front"), gas.Number("area_rear"), laws), [], null);
        }

        if (!root.TryGetProperty("fluid", out var fluid))
        {
            return ([], [], null);
        }

        Element Accumulator(int i, string end) => At(i, "accumulator") with
        {
            Sight = Sight.Volume(i, fluid.Number($"area_{end}"), flows: true),
            OnTravel = fluid.TryGetProperty($"gas_pressure_{end}", out var pressure)
                ? Volume(pressure.GetDouble(), fluid.Number($"gas_volume_{end}"), fluid.Number("exponent"))
                : [new StraightLaw { Slope = 1.0 / fluid.Number($"compliance_{end}") }],
        };
        return (
            [],
            [Accumulator(0, "front"), Accumulator(1, "front"), Accumulator(2, "rear"), Accumulator(3, "rear")],
            new SideLine(fluid.Number("inertance"), fluid.Number("resistance")));
    }
}
