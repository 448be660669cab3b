namespace Heaveline.Passes.Exact;

/// <summary>Where every kinked element and every tyre stands at the moment, and the straight equations that hold there.</summary>
internal sealed class ExactRegime
{
    private readonly ExactCar car;

    /// <summary>The regime at trim: every tyre on the road.</summary>
    public ExactRegime(ExactCar car)
    {
        this.car = car;
        Piece = [.. car.Elements.Select(element => element.Law.AtTrim)];
        Stiffness = new double[car.Count, car.Count];
        Damping = new double[car.Count, car.Count];
        Constant = new double[car.Count];
        Rebuild();
    }

    /// <summary>Piece of each element's law.</summary>
    public int[] Piece { get; }

    /// <summary>State of each tyre.</summary>
    public ExactContact[] Contact { get; } = new ExactContact[4];

    /// <summary>K of −K·q − D·q̇ − c, tyres left out.</summary>
    public double[,] Stiffness { get; }

    /// <summary>D of −K·q − D·q̇ − c.</summary>
    public double[,] Damping { get; }

    /// <summary>c of −K·q − D·q̇ − c.</summary>
    public double[] Constant { get; }

    /// <summary>Adds the equations up again: afresh each time, so that no rounding gathers over many events.</summary>
    public void Rebuild()
    {
        Array.Copy(car.Stiffness, Stiffness, Stiffness.Length);
        Array.Copy(car.Damping, Damping, Damping.Length);
        Array.Clear(Constant);
        for (var e = 0; e < Piece.Length; e++)
        {
            var element = car.Elements[e];
            ExactCar.AddSquare(element.OnRates ? Damping : Stiffness, element.Row, element.Law.Slopes[Piece[e]]);
            for (var i = 0; i < Constant.Length; i++)
            {
                Constant[i] += element.Row[i] * element.Law.Constants[Piece[e]];
            }
        }
    }
}
