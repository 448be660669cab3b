using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Tests.Numerics;

public class LeastSquaresTests
{
    /// <summary>
    /// Five points by hand: x 1…5, y 2, 4, 5, 4, 5: slope 0.6, intercept 2.2, Σr² = 2.4, s = √0.8, standard error of the slope √(0.8/10); Student's t
    /// for 3 degrees of freedom, 95 %: 3.182 (tables).
    /// </summary>
    [Fact]
    public void A_line_through_five_points_has_the_slope_and_interval_worked_by_hand()
    {
        var fit = new LeastSquares([[1, 1], [1, 2], [1, 3], [1, 4], [1, 5]], [2, 4, 5, 4, 5]);
        Assert.Equal(2.2, fit.Coefficients[0], 1e-12);
        Assert.Equal(0.6, fit.Coefficients[1], 1e-12);
        Assert.Equal(2.4, fit.SumOfSquares, 1e-12);
        Assert.Equal(3.182 * Math.Sqrt(0.08), fit.HalfWidth(0.0, 1.0), 5e-4);
    }

    [Fact]
    public void Readings_at_one_place_are_refused() =>
        Assert.Throws<RefusedValueException>(() => new LeastSquares([[1, 2], [1, 2], [1, 2]], [1, 2, 3]));
}
