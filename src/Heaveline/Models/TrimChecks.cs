using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Models;

/// <summary>What a found balance must still pass: it must be stable, every wheel on the ground, nothing past its travel.</summary>
internal static class TrimChecks
{
    private static readonly string[] Motions = ["heave", "pitch", "roll"];
    private static readonly string[] Corners = ["front left", "front right", "rear left", "rear right"];

    /// <summary>A balance on a knife's edge is no standing position: a body without pitch or roll stiffness tips at a touch.</summary>
    /// <param name="load">The load state.</param>
    /// <param name="n">The car's numbers.</param>
    /// <param name="tangent">Slopes of the balance there, row after row; overwritten.</param>
    public static void RefuseUnstable(LoadState load, RideNumbers n, Span<double> tangent)
    {
        // Condense wheels and fluid out of the tangent: what is left is the body's stiffness in heave, pitch and roll (scaled by its weight).
        Elimination.Condense(tangent, TrimBalance.Unknowns, 3);
        Span<double> leading = stackalloc double[3];
        Leading(tangent, TrimBalance.Unknowns, leading);
        for (var i = 0; i < (n.Rolls ? 3 : 2); i++)
        {
            // Σforce falls as the body rises, and the moments turn back: each diagonal is negative when it is stiff; roll's row is +Σ y F.
            var expected = i % 2 == 0 ? -1.0 : 1.0;
            if (!(leading[i] * expected > 1e-9))
            {
                throw new RefusedValueException(
                    "suspension",
                    $"without stiffness in {Motions[i]} in load state '{load.Name}'",
                    "stiff in heave, pitch and roll",
                    $"The car would tip in {Motions[i]}: check the springs' rates and their units; "
                    + "an interconnection needs corner springs beside it.");
            }
        }
    }

    // Determinants of the first one, two and three rows and columns.
    private static void Leading(ReadOnlySpan<double> a, int n, Span<double> leading)
    {
        var b = a[n..];
        var c = a[(2 * n)..];
        leading[0] = a[0];
        leading[1] = (a[0] * b[1]) - (a[1] * b[0]);
        leading[2] =
            (a[0] * ((b[1] * c[2]) - (b[2] * c[1]))) - (a[1] * ((b[0] * c[2]) - (b[2] * c[0]))) + (a[2] * ((b[0] * c[1]) - (b[1] * c[0])));
    }

    // A travel in whole millimetres, or in as many digits as tell it from the limit beside it.
    private static string Apart(double travel, double from)
    {
        string[] digits = ["F0", "F1", "F2", "F3"];
        string Shown(double length, string format) => Numeral.Of(In.Millimetres.Of(length), format);
        return Shown(travel, digits.FirstOrDefault(format => Shown(travel, format) != Shown(from, format)) ?? digits[^1]);
    }

    public static void RefuseOutOfTravel(Car car, LoadState load, ElementList elements, TrimSolution trim)
    {
        for (var i = 0; i < 4; i++)
        {
            if (trim.Load[i] > 0.0 && trim.Travel[i] < elements.BumpLimit[i] && trim.Travel[i] > elements.ReboundLimit[i])
            {
                continue;
            }

            var name = car.Kind == VehicleKind.TwoWheeler ? Corners[i].Split(' ')[0] : Corners[i];
            if (!(trim.Load[i] > 0.0))
            {
                throw new RefusedValueException(
                    "load state",
                    $"'{load.Name}' with the {name} wheel off the ground",
                    "a load under which every wheel presses on the ground",
                    "The car would tip: move the load towards the middle.");
            }

            if (trim.Travel[i] >= elements.BumpLimit[i] && elements.EndsInCoils(i))
            {
                throw new RefusedValueException(
                    "load state",
                    $"'{load.Name}' with {Apart(trim.Travel[i], elements.BumpLimit[i])} mm of travel at the {name} wheel",
                    $"below the {Apart(elements.BumpLimit[i], trim.Travel[i])} mm at which the coils of its spring touch",
                    "The spring cannot carry this load before it is solid: it needs a stiffer or longer one, or one of a shorter block length.");
            }

            if (trim.Travel[i] >= elements.BumpLimit[i])
            {
                throw new RefusedValueException(
                    "load state",
                    $"'{load.Name}' with {Apart(trim.Travel[i], elements.BumpLimit[i])} mm of travel at the {name} wheel",
                    $"below the {Apart(elements.BumpLimit[i], trim.Travel[i])} mm at which it bottoms",
                    "The springs cannot carry this load within their travel.");
            }

            if (trim.Travel[i] <= elements.ReboundLimit[i])
            {
                throw new RefusedValueException(
                    "load state",
                    $"'{load.Name}' with {Apart(-trim.Travel[i], -elements.ReboundLimit[i])} mm of droop at the {name} wheel",
                    $"below the {Apart(-elements.ReboundLimit[i], -trim.Travel[i])} mm at which it tops out",
                    "Take less out, or check the weighing.");
            }
        }

        // A displacer only pushes: its gauge pressure must stay above zero. The elastic link may pull.
        if (elements.HoldsFluid && Array.Exists(trim.Pressure, p => !(p > 0.0)))
        {
            throw new RefusedValueException(
                "line pressure",
                $"{trim.Pressure.Min() / 1e5:G3} bar in load state '{load.Name}'",
                "above 0 bar",
                "Raise the base pressure or soften the corner springs.");
        }
    }
}
