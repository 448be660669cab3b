using Heaveline.Elements;
using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Drives.Identification;

/// <summary>The numbers of a car from its parameters, with their slopes.</summary>
internal static class CarNumbers
{
    /// <summary>All of them in order.</summary>
    public static IReadOnlyList<CarNumber> All { get; } = Enum.GetValues<CarNumber>();

    /// <summary>Those by which a drive is judged.</summary>
    public static IReadOnlyList<CarNumber> Headlines { get; } =
    [
        CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio, CarNumber.FrontDamping, CarNumber.RearDamping,
        CarNumber.PitchIndex,
    ];

    /// <summary>The logarithm of every number, in order.</summary>
    /// <param name="p">The car's parameters.</param>
    /// <param name="wheelbase">m.</param>
    public static double[] Logarithms(ReadOnlySpan<double> p, double wheelbase)
    {
        var modes = Modes(p, wheelbase);
        return
        [
            p[CarParameter.FrontFrequency], p[CarParameter.RearFrequency], p[CarParameter.RearFrequency] - p[CarParameter.FrontFrequency],
            p[CarParameter.FrontDamping], p[CarParameter.RearDamping], p[CarParameter.PitchIndex],
            Math.Log(modes[0].Frequency), Math.Log(modes[0].Damping), Math.Log(modes[1].Frequency), Math.Log(modes[1].Damping),
            p[CarParameter.FrontHop], p[CarParameter.RearHop],
        ];
    }

    /// <summary>Slopes of the logarithms by the car's parameters, by central differences, shape (numbers, parameters).</summary>
    public static double[][] Slopes(ReadOnlySpan<double> p, double wheelbase)
    {
        const double step = 1e-5;
        var result = All.Select(_ => new double[CarParameter.Car]).ToArray();
        for (var j = 0; j < CarParameter.Car; j++)
        {
            var (up, down) = (p[..CarParameter.Car].ToArray(), p[..CarParameter.Car].ToArray());
            up[j] += step;
            down[j] -= step;
            var (high, low) = (Logarithms(up, wheelbase), Logarithms(down, wheelbase));
            for (var i = 0; i < result.Length; i++)
            {
                result[i][j] = (high[i] - low[i]) / (2.0 * step);
            }
        }

        return result;
    }

    /// <summary>
    /// What all events share and no interval of theirs can show: speed that drifts, ends of windows, splines. Found on planted cars.
    /// </summary>
    public static double Floor(CarNumber number) => number switch
    {
        CarNumber.FrequencyRatio or CarNumber.PitchIndex => 0.001,
        CarNumber.FrontDamping or CarNumber.RearDamping or CarNumber.FirstModeDamping or CarNumber.SecondModeDamping => 0.008,
        _ => 0.002,
    };

    /// <summary>A car as parameters.</summary>
    public static double[] Parameters(LinearCar car) =>
    [
        Math.Log(car.FrontFrequency), Math.Log(car.RearFrequency), Math.Log(car.FrontDamping), Math.Log(car.RearDamping), Math.Log(car.PitchIndex),
        car.FrontShare, car.PhoneBehindFrontAxle, Math.Log(car.FrontUnsprung), Math.Log(car.RearUnsprung), Math.Log(car.FrontHop),
        Math.Log(car.RearHop),
    ];

    /// <summary>Parameters as a car.</summary>
    public static LinearCar Car(ReadOnlySpan<double> p, double wheelbase) => new()
    {
        Wheelbase = wheelbase,
        FrontFrequency = Math.Exp(p[CarParameter.FrontFrequency]),
        RearFrequency = Math.Exp(p[CarParameter.RearFrequency]),
        FrontDamping = Math.Exp(p[CarParameter.FrontDamping]),
        RearDamping = Math.Exp(p[CarParameter.RearDamping]),
        PitchIndex = Math.Exp(p[CarParameter.PitchIndex]),
        FrontShare = p[CarParameter.FrontShare],
        PhoneBehindFrontAxle = p[CarParameter.Phone],
        FrontUnsprung = Math.Exp(p[CarParameter.FrontUnsprung]),
        RearUnsprung = Math.Exp(p[CarParameter.RearUnsprung]),
        FrontHop = Math.Exp(p[CarParameter.FrontHop]),
        RearHop = Math.Exp(p[CarParameter.RearHop]),
    };

    // The two slowest modes of body and wheels together: eigenvalues λ of the equations of motion, frequency |λ|/2π, damping −Re λ/|λ|.
    private static (double Frequency, double Damping)[] Modes(ReadOnlySpan<double> p, double wheelbase)
    {
        var car = Car(p, wheelbase);
        var (b, c) = ((1.0 - car.FrontShare) * wheelbase, car.FrontShare * wheelbase);
        double Square(double f) => 4.0 * Math.PI * Math.PI * f * f;
        (double Mass, double Arm, double Frequency, double Damping, double Unsprung, double Hop)[] axles =
        [
            (car.FrontShare, -b, car.FrontFrequency, car.FrontDamping, car.FrontUnsprung, car.FrontHop),
            (1.0 - car.FrontShare, c, car.RearFrequency, car.RearDamping, car.RearUnsprung, car.RearHop),
        ];
        var a = Matrix<double>.Build.Dense(8, 8);
        double[] mass = [1.0, car.PitchIndex * b * c, axles[0].Mass * axles[0].Unsprung, axles[1].Mass * axles[1].Unsprung];
        for (var i = 0; i < 4; i++)
        {
            a[i, i + 4] = 1.0;
        }

        a[5, 1] += Gravity.Standard * HalfCarResponse.GravityHeight / mass[1];
        for (var k = 0; k < 2; k++)
        {
            var axle = axles[k];
            // How the suspension is pressed together by heave, pitch and its wheel.
            double[] travel = [-1.0, -axle.Arm, k == 0 ? 1.0 : 0.0, k == 1 ? 1.0 : 0.0];
            var (rate, damp) = (axle.Mass * Square(axle.Frequency), 4.0 * Math.PI * axle.Damping * axle.Mass * axle.Frequency);
            for (var i = 0; i < 4; i++)
            {
                for (var j = 0; j < 4; j++)
                {
                    a[i + 4, j] -= travel[i] * rate * travel[j] / mass[i];
                    a[i + 4, j + 4] -= travel[i] * damp * travel[j] / mass[i];
                }
            }

            a[6 + k, 2 + k] -= Square(axle.Hop);
        }

        var swings = Eigenpairs.Of(a).Values.Where(v => v.Imaginary > 0.0).OrderBy(v => v.Magnitude).Take(2)
            .Select(v => (v.Magnitude / (2.0 * Math.PI), -v.Real / v.Magnitude)).ToArray();
        return swings.Length == 2 ? swings : [(double.NaN, double.NaN), (double.NaN, double.NaN)];
    }
}
