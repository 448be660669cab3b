using Heaveline.Elements;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Models;

/// <summary>Slopes of all elements at a trim summed up by virtual work, over the positions and over the wheels' travels.</summary>
internal sealed class TangentSlopes
{
    /// <param name="n">The car's numbers about a trim.</param>
    /// <param name="counts">Which elements count; null for all.</param>
    public TangentSlopes(RideNumbers n, Predicate<Element>? counts = null)
    {
        var count = n.Positions;
        var (stiffness, damping) = (new double[count * count], new double[count * count]);
        var (rates, dampings) = (new double[16], new double[16]);
        foreach (var element in n.Elements.All)
        {
            if (counts is null || counts(element))
            {
                var at = element.AtRest(n.AtTrim(element.Sight));
                var row = n.Row(element.Sight, count);
                AddSquare(stiffness, row, at.Rate);
                AddSquare(damping, row, at.Damping);
                AddSquare(rates, element.Sight.Wheels, at.Rate);
                AddSquare(dampings, element.Sight.Wheels, at.Damping);
            }
        }

        // Both are symmetric: it does not matter that the library goes down the columns.
        SuspensionRate = Matrix<double>.Build.Dense(4, 4, rates);
        SuspensionDamping = Matrix<double>.Build.Dense(4, 4, dampings);
        stiffness[count + 1] -= n.PitchGravity;
        stiffness[(2 * count) + 2] -= n.RollGravity;
        for (var i = 3; i < 7; i++)
        {
            stiffness[(i * count) + i] += n.TyreRate[i - 3];
            damping[(i * count) + i] += n.TyreDamping[i - 3];
        }

        (ByPlace, BySpeed) = (Accelerations(n, stiffness), Accelerations(n, damping));
    }

    /// <summary>p̈ per place, −M⁻¹·K without the road, row after row; of a flow without inertance its rate, −K/R.</summary>
    public double[] ByPlace { get; }

    /// <summary>p̈ per speed, −M⁻¹·C.</summary>
    public double[] BySpeed { get; }

    /// <summary>∂F_i/∂s_j at the four wheels, N/m.</summary>
    public Matrix<double> SuspensionRate { get; }

    /// <summary>∂F_i/∂ṡ_j at the four wheels, N s/m.</summary>
    public Matrix<double> SuspensionDamping { get; }

    // Adds weight·row·rowᵀ.
    private static void AddSquare(double[] matrix, ReadOnlySpan<double> row, double weight)
    {
        for (var i = 0; i < row.Length && weight != 0.0; i++)
        {
            for (var j = 0; j < row.Length && row[i] != 0.0; j++)
            {
                matrix[(i * row.Length) + j] += weight * row[i] * row[j];
            }
        }
    }

    private static double[] Accelerations(RideNumbers n, double[] push)
    {
        var (count, perForce) = (n.Positions, n.PerForce());
        var moves = new double[push.Length];
        for (var i = 0; i < count; i++)
        {
            for (var k = 0; k < count; k++)
            {
                var per = i >= 7 && i == k ? 1.0 / n.Elements.Line!.Scale : perForce[i, k];
                for (var j = 0; j < count && per != 0.0; j++)
                {
                    moves[(i * count) + j] -= per * push[(k * count) + j];
                }
            }
        }

        return moves;
    }
}
