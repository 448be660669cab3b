using Heaveline.Models;

namespace Heaveline.Passes;

/// <summary>The elements of a car that are curved between their kinks, in words.</summary>
internal static class CurvedElements
{
    /// <summary>Their names, front first; empty for a piecewise straight car.</summary>
    public static IReadOnlyList<string> Of(CornerLaws laws)
    {
        var names = new List<string>();
        for (var i = 0; i < 4; i++)
        {
            var end = i < 2 ? "front" : "rear";
            Name(laws.SpringRatio[1][i] != 0.0 || laws.SpringRatio[2][i] != 0.0, "spring motion ratio that varies with travel");
            Name(laws.DamperRatio[1][i] != 0.0 || laws.DamperRatio[2][i] != 0.0, "damper motion ratio that varies with travel");
            Name(laws.GasForce[i] != 0.0, "gas spring");
            Name(laws.CurvedBump[1][i] != 0.0, "bump stop with an exponent");
            Name(laws.CurvedRebound[1][i] != 0.0, "rebound stop with an exponent");
            Name(laws.Friction[i] != 0.0, "friction");
            Name(laws.FluidGasPressure[i] != 0.0, "gas accumulator");

            void Name(bool isCurved, string what)
            {
                if (isCurved && !names.Contains($"{end} {what}"))
                {
                    names.Add($"{end} {what}");
                }
            }
        }

        if (laws.LinkGasPressure != 0.0)
        {
            names.Add("gas of the open line");
        }

        return names;
    }
}
