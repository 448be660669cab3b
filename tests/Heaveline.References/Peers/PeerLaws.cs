using System.Text.Json;
using Heaveline.Models;

namespace Heaveline.References.Peers;

/// <summary>The elements of a case, as bench/peers/README.md defines them, as hinge sums.</summary>
internal static class PeerLaws
{
    internal static CornerLaws From(JsonElement root, JsonElement[] axles, double[] y, bool isHalf)
    {
        var laws = new CornerLaws();
        var half = isHalf ? 0.5 : 1.0;
        for (var i = 0; i < 4; i++)
        {
            var axle = axles[i / 2];
            var spring = axle.GetProperty("spring");
            if (spring.GetArrayLength() != 1)
            {
                throw new NotSupportedException("A spring of powers of travel is no sum of straight pieces.");
            }

            laws.SpringSlope[i] = half * spring[0].GetDouble();
            laws.SpringRatio[0][i] = laws.DamperRatio[0][i] = 1.0;
            SetRatiosAndGas(laws, axle, i);
            SetDamper(laws, axle.GetProperty("damper"), i, half);
            SetStops(laws, axle, "bump_stop", i, half, +1.0);
            SetStops(laws, axle, "rebound_stop", i, half, -1.0);
            laws.Bar[i] = axle.Number("anti_roll_bar", 0.0);
            SetFriction(laws, axle, i, half);
            if (PeerNumbers.IsSolid(axle))
            {
                laws.Needs |= Needs.SolidAxle;
                var track = y[i & 2] - y[(i & 2) + 1];
                double Share(string what) => 0.5 * (1.0 + (axle.Number(what) / track));
                (laws.SpringShare[i], laws.DamperShare[i], laws.StopShare[i]) = (Share("spring_base"), Share("damper_base"), Share("stop_base"));
            }
        }

        SetInterconnection(laws, root);
        return laws;
    }

    private static void SetRatiosAndGas(CornerLaws laws, JsonElement axle, int i)
    {
        foreach (var (name, ratios) in new[] { ("spring_ratio", laws.SpringRatio), ("damper_ratio", laws.DamperRatio) })
        {
            if (axle.TryGetProperty(name, out var ratio))
            {
                laws.Needs |= Needs.VaryingRatio;
                for (var k = 0; k < 3; k++)
                {
                    ratios[k][i] = ratio[k].GetDouble();
                }
            }
        }

        if (axle.TryGetProperty("gas", out var gas))
        {
            laws.Needs |= Needs.Gas;
            (laws.GasForce[i], laws.GasAreaPerVolume[i], laws.GasExponent[i]) =
                (gas.Number("force"), gas.Number("area_per_volume"), gas.Number("exponent"));
        }
    }

    private static void SetDamper(CornerLaws laws, JsonElement table, int i, double half)
    {
        var v = table.GetProperty("velocity").EnumerateArray().Select(value => value.GetDouble()).ToArray();
        var f = table.GetProperty("force").EnumerateArray().Select(value => value.GetDouble()).ToArray();
        double Slope(int piece) => half * (f[piece + 1] - f[piece]) / (v[piece + 1] - v[piece]);
        double[] at = v[1..^1];
        double[] bends = [.. Enumerable.Range(1, at.Length).Select(j => Slope(j) - Slope(j - 1))];
        laws.DamperSlope[i] = Slope(0);
        laws.DamperHinges.Set(i, at, bends);
        laws.DamperConstant[i] = -at.Zip(bends, (place, bend) => bend * Math.Max(0.0, place)).Sum();
    }

    private static void SetStops(CornerLaws laws, JsonElement axle, string name, int i, double half, double side)
    {
        if (!axle.TryGetProperty(name, out var terms))
        {
            return;
        }

        var list = terms.EnumerateArray()
            .Select(term => (At: side * term.Number("clearance"), C: half * term.Number("coefficient"), Exponent: term.Number("exponent"))).ToArray();
        if (list is [{ Exponent: not 1.0 } curved])
        {
            laws.Needs |= Needs.CurvedStop;
            var law = side > 0.0 ? laws.CurvedBump : laws.CurvedRebound;
            (law[0][i], law[1][i], law[2][i]) = (side * curved.At, curved.C, curved.Exponent);
            return;
        }

        Assert.All(list, term => Assert.Equal(1.0, term.Exponent));
        (side > 0.0 ? laws.BumpHinges : laws.ReboundHinges).Set(i, [.. list.Select(term => term.At)], [.. list.Select(term => term.C)]);
        laws.StopConstant[i] -= list.Sum(term => term.C * term.At);
    }

    private static void SetFriction(CornerLaws laws, JsonElement axle, int i, double half)
    {
        if (axle.TryGetProperty("friction", out var friction))
        {
            laws.Needs |= Needs.Friction;
            laws.Friction[i] = half * friction.Number("force");
            laws.PreSliding[i] = friction.Number("pre_sliding");
        }
    }

    private static void SetInterconnection(CornerLaws laws, JsonElement root)
    {
        if (root.TryGetProperty("elastic", out var link))
        {
            laws.Needs |= Needs.ElasticLink;
            laws.LinkRate = link.Number("rate");
            for (var i = 0; i < 4; i++)
            {
                laws.LinkRatio[i] = link.Number(i < 2 ? "ratio_front" : "ratio_rear");
            }
        }

        if (root.TryGetProperty("fluid", out var fluid))
        {
            laws.Needs |= Needs.FluidLink;
            laws.FluidFlows = true;
            laws.FluidInertance = fluid.Number("inertance");
            laws.FluidResistance = fluid.Number("resistance");
            for (var i = 0; i < 4; i++)
            {
                laws.FluidArea[i] = fluid.Number(i < 2 ? "area_front" : "area_rear");
                var end = i < 2 ? "front" : "rear";
                if (fluid.TryGetProperty($"gas_pressure_{end}", out var pressure))
                {
                    laws.Needs |= Needs.FluidGas;
                    laws.FluidGasPressure[i] = pressure.GetDouble();
                    laws.FluidPerVolume[i] = 1.0 / fluid.Number($"gas_volume_{end}");
                    laws.FluidExponent[i] = fluid.Number("exponent");
                }
                else
                {
                    laws.FluidStiffness[i] = 1.0 / fluid.Number($"compliance_{end}");
                }
            }
        }

        if (root.TryGetProperty("gas_line", out var gas))
        {
            laws.Needs |= Needs.ElasticLink | Needs.FluidGas;
            (laws.LinkGasPressure, laws.LinkPerVolume, laws.LinkExponent) =
                (gas.Number("pressure"), 1.0 / gas.Number("volume"), gas.Number("exponent"));
            for (var i = 0; i < 4; i++)
            {
                laws.LinkRatio[i] = gas.Number(i < 2 ? "area_front" : "area_rear");
            }
        }
    }
}
