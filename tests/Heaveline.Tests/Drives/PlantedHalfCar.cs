using Heaveline.Drives.Identification;
using Heaveline.Elements;
using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Tests.Drives;

/// <summary>
/// The linear half car of one kilogram of sprung mass stepped through time by its matrix exponential: equations of motion written down a second
/// time, apart from the closed forms of frequency.
/// </summary>
internal sealed class PlantedHalfCar
{
    private const int States = 8;

    private readonly double[] next, push;
    private readonly double[] acceleration;

    public PlantedHalfCar(LinearCar car, double step)
    {
        var (b, c) = ((1.0 - car.FrontShare) * car.Wheelbase, car.FrontShare * car.Wheelbase);
        var (mf, mr) = (car.FrontShare, 1.0 - car.FrontShare);
        double Rate(double f) => 4.0 * Math.PI * Math.PI * f * f;
        var (kf, kr) = (mf * Rate(car.FrontFrequency), mr * Rate(car.RearFrequency));
        var (cf, cr) = (4.0 * Math.PI * car.FrontDamping * mf * car.FrontFrequency, 4.0 * Math.PI * car.RearDamping * mr * car.RearFrequency);
        var (uf, ur) = (car.FrontUnsprung * mf, car.RearUnsprung * mr);
        var (tf, tr) = (uf * Rate(car.FrontHop), ur * Rate(car.RearHop));
        // Heave, pitch (nose down), front and rear wheel; what each spring is pressed together by.
        var travel = Matrix<double>.Build.DenseOfArray(new[,] { { -1.0, b, 1.0, 0.0 }, { -1.0, -c, 0.0, 1.0 } });
        var stiffness = travel.Transpose() * Matrix<double>.Build.DenseOfDiagonalArray([kf, kr]) * travel;
        stiffness[2, 2] += tf;
        stiffness[3, 3] += tr;
        stiffness[1, 1] -= Gravity.Standard * 0.25;
        var damping = travel.Transpose() * Matrix<double>.Build.DenseOfDiagonalArray([cf, cr]) * travel;
        double[] mass = [1.0, car.PitchIndex * b * c, uf, ur];
        var whole = Matrix<double>.Build.Dense(States + 2, States + 2);
        for (var i = 0; i < 4; i++)
        {
            whole[i, i + 4] = 1.0;
            for (var j = 0; j < 4; j++)
            {
                whole[i + 4, j] = -stiffness[i, j] / mass[i];
                whole[i + 4, j + 4] = -damping[i, j] / mass[i];
            }
        }

        (whole[6, 8], whole[7, 9]) = (tf / uf, tr / ur);
        var phone = b - car.PhoneBehindFrontAxle;
        acceleration = [.. Enumerable.Range(0, States).Select(j => whole[4, j] - (phone * whole[5, j]))];
        var step1 = MatrixExponential.Of(whole * step);
        next = [.. Enumerable.Range(0, States * States).Select(k => step1[k / States, k % States])];
        push = [.. Enumerable.Range(0, States * 2).Select(k => step1[k / 2, States + (k % 2)])];
    }

    /// <summary>Vertical acceleration at the phone and pitch rate, from rest, the road held over each step at the mean of its ends.</summary>
    public (double[] Vertical, double[] PitchRate) Over(double[] front, double[] rear)
    {
        var (vertical, rate) = (new double[front.Length], new double[front.Length]);
        Span<double> x = stackalloc double[States];
        Span<double> y = stackalloc double[States];
        for (var i = 0; i < front.Length; i++)
        {
            (vertical[i], rate[i]) = (Dot.Of(acceleration, x), x[5]);
            if (i + 1 == front.Length)
            {
                break;
            }

            var (f, r) = (0.5 * (front[i] + front[i + 1]), 0.5 * (rear[i] + rear[i + 1]));
            for (var k = 0; k < States; k++)
            {
                y[k] = Dot.Of(next.AsSpan(k * States, States), x) + (push[2 * k] * f) + (push[(2 * k) + 1] * r);
            }

            y.CopyTo(x);
        }

        return (vertical, rate);
    }
}
