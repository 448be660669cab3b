namespace Heaveline.Studies;

/// <summary>By how much a setup changes a number, each drawn car against itself without the parts.</summary>
/// <param name="Stated">In the car as stated, SI.</param>
/// <param name="Mean">Mean over the drawn cars.</param>
/// <param name="HalfWidth">The half-width that nine drawn cars of ten lie within about it.</param>
/// <param name="Draws">In how many drawn cars both have the number.</param>
internal sealed record ChooseChange(double Stated, double Mean, double HalfWidth, int Draws)
{
    /// <summary>The least in 9 drawn cars of 10.</summary>
    public double Low => Mean - HalfWidth;

    /// <summary>The most.</summary>
    public double High => Mean + HalfWidth;

    /// <summary>Whether it is told from no change.</summary>
    public bool IsTold => Draws > 1 && (Low > 0.0 || High < 0.0);
}
