namespace Heaveline.Passes.Exact;

/// <summary>
/// Taylor series in time of coordinates and rates about one moment. In one regime the equations are straight and the road is a cubic, so every
/// coefficient follows from the one before: q₍ₖ₊₁₎ = v₍ₖ₎/(k+1), v₍ₖ₊₁₎ = a₍ₖ₎/(k+1).
/// </summary>
internal sealed class ExactSeries
{
    // Largest share of a coordinate's own speed that the last term of the series may add.
    private const double Truncation = 1e-16;

    // A speed below which a coordinate counts as at rest, m/s or rad/s.
    private const double AtRest = 1e-6;

    private readonly ExactCar car;
    private readonly double[] force;
    private readonly double[] fastest;

    public ExactSeries(ExactCar car, int order)
    {
        this.car = car;
        Order = order;
        Position = new double[order + 1, car.Count];
        Rate = new double[order + 1, car.Count];
        Tyre = new double[order + 1, 4];
        Elastic = new double[order + 1, 4];
        Suspension = new double[car.Count];
        force = new double[car.Count];
        fastest = [.. Enumerable.Range(0, car.Count).Select(i => i < 7 ? AtRest : AtRest * car.FlowScale)];
    }

    /// <summary>Highest power of time.</summary>
    public int Order { get; }

    /// <summary>Coefficients of the coordinates, shape (order + 1, count).</summary>
    public double[,] Position { get; }

    /// <summary>Coefficients of their rates.</summary>
    public double[,] Rate { get; }

    /// <summary>Coefficients of k·t + c·ṫ of each tyre, whatever its contact, shape (order + 1, 4).</summary>
    public double[,] Tyre { get; }

    /// <summary>Coefficients of k·t of each tyre.</summary>
    public double[,] Elastic { get; }

    /// <summary>Generalised force that the suspension (and gravity's tilting) takes at the moment itself: at a wheel, the suspension force.</summary>
    public double[] Suspension { get; }

    /// <summary>Computes all coefficients from those of power 0 in <see cref="Position"/> and <see cref="Rate"/>.</summary>
    /// <param name="regime">Where everything stands.</param>
    /// <param name="road">Height at the four wheels in powers of time, shape (4, <see cref="ExactTrack.Order"/>).</param>
    public void Expand(ExactRegime regime, ReadOnlySpan<double> road)
    {
        for (var k = 0; k <= Order; k++)
        {
            for (var i = car.Rates; i < car.Count; i++)
            {
                Rate[k, i] = Follow(regime, k, i);
            }

            for (var i = 0; i < car.Count; i++)
            {
                var sum = k == 0 ? regime.Constant[i] : 0.0;
                for (var j = 0; j < car.Count; j++)
                {
                    sum += (regime.Stiffness[i, j] * Position[k, j]) + (regime.Damping[i, j] * Rate[k, j]);
                }

                force[i] = -sum;
                if (k == 0)
                {
                    Suspension[i] = sum;
                }
            }

            for (var i = 0; i < 4; i++)
            {
                force[3 + i] += TyreForce(regime, road.Slice(ExactTrack.Order * i, ExactTrack.Order), k, i);
            }

            if (k < Order)
            {
                for (var i = 0; i < car.Count; i++)
                {
                    var acceleration = 0.0;
                    for (var j = 0; j < car.Count; j++)
                    {
                        acceleration += car.InverseMass[i, j] * force[j];
                    }

                    Position[k + 1, i] = Rate[k, i] / (k + 1);
                    Rate[k + 1, i] = acceleration / (k + 1);
                }
            }
        }
    }

    // Rate of a flow without inertance: its resistance balances the pressures. Nothing else damps it.
    private double Follow(ExactRegime regime, int k, int i)
    {
        var pressure = k == 0 ? regime.Constant[i] : 0.0;
        for (var j = 0; j < car.Count; j++)
        {
            pressure += regime.Stiffness[i, j] * Position[k, j];
        }

        return -pressure / regime.Damping[i, i];
    }

    /// <summary>Longest step, s, whose last two terms stay below rounding for every coordinate.</summary>
    public double LongestStep()
    {
        var last = 0.0;
        var before = 0.0;
        for (var i = 0; i < car.Count; i++)
        {
            fastest[i] = Math.Max(fastest[i], Math.Abs(Rate[0, i]));
            last = Math.Max(last, Math.Abs(Rate[Order, i]) / fastest[i]);
            before = Math.Max(before, Math.Abs(Rate[Order - 1, i]) / fastest[i]);
        }

        return Math.Min(Math.Pow(Truncation / last, 1.0 / Order), Math.Pow(Truncation / before, 1.0 / (Order - 1)));
    }

    /// <summary>Moves the moment on by <paramref name="step"/>: writes the sums of the series into their coefficients of power 0.</summary>
    public void Advance(double step)
    {
        for (var i = 0; i < car.Count; i++)
        {
            var position = Position[Order, i];
            var rate = Rate[Order, i];
            for (var k = Order - 1; k >= 0; k--)
            {
                position = (position * step) + Position[k, i];
                rate = (rate * step) + Rate[k, i];
            }

            Position[0, i] = position;
            Rate[0, i] = rate;
        }
    }

    /// <summary>Change of a tyre's load from trim at the moment itself, N.</summary>
    public double TyreNow(ExactRegime regime, int corner) => regime.Contact[corner] == ExactContact.Pushing ? Tyre[0, corner] : -car.Load[corner];

    private double TyreForce(ExactRegime regime, ReadOnlySpan<double> road, int k, int i)
    {
        var height = k < ExactTrack.Order ? road[k] : 0.0;
        var rate = k + 1 < ExactTrack.Order ? (k + 1) * road[k + 1] : 0.0;
        Elastic[k, i] = car.TyreRate[i] * (height - Position[k, 3 + i]);
        Tyre[k, i] = Elastic[k, i] + (car.TyreDamping[i] * (rate - Rate[k, 3 + i]));
        if (regime.Contact[i] == ExactContact.Pushing)
        {
            return Tyre[k, i];
        }

        return k == 0 ? -car.Load[i] : 0.0;
    }
}
