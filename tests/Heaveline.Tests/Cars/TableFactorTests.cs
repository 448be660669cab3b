using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Tests.Cars;

public class TableFactorTests
{
    private static readonly ForceTable Table = new([0.0, 0.1, 0.3], [0.0, 100.0, 500.0]);

    [Fact]
    public void A_factor_moves_every_force_and_no_place()
    {
        var off = Table.Under(new Amount<Plain>(1.05, new Doubt(0.1)));
        Assert.Equal(Table.At, off.At);
        Assert.Equal([0.0, 105.0, 525.0], off.Force.Select(f => Math.Round(f, 9)));
        Assert.Equal(0.1, off.Factor.Doubt.HalfWidth);
    }

    [Fact]
    public void A_second_factor_takes_the_place_of_the_first()
    {
        var back = Table.Under(new Amount<Plain>(1.25)).Under(ForceTable.AsMeasured);
        Assert.Equal(Table, back);
        Assert.NotEqual(Table, Table.Under(new Amount<Plain>(1.0, new Doubt(0.05))));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-0.2)]
    [InlineData(double.NaN)]
    public void A_factor_that_is_not_positive_is_refused(double factor) =>
        Assert.Throws<RefusedValueException>(() => Table.Under(new Amount<Plain>(factor)));

    [Fact]
    public void Both_sides_of_a_damper_have_one_factor_even_when_a_side_is_one_point()
    {
        var factor = new Amount<Plain>(1.1, new Doubt(0.06, "club rig"));
        var damper = new TableDamper(new ForceTable([0.0, 0.2], [0.0, 200.0]), new ForceTable([0.1, 0.3], [300.0, 700.0])).Under(factor);
        Assert.Equal(factor, damper.Factor);
        Assert.Equal(220.0, damper.Whole.ForceAt(0.2), 1e-9);
        Assert.Equal(-330.0, damper.Whole.ForceAt(-0.1), 1e-9);
        Assert.Throws<RefusedValueException>(() => new TableDamper(damper.Bump, damper.Rebound.Under(ForceTable.AsMeasured)));
    }

    // The scales say what a spring carries, so a table that reads high has the car stand lower on it, where a table that stiffens is softer.
    [Fact]
    public void A_spring_table_under_a_factor_still_carries_the_car()
    {
        var spring = new TableSpring(new ForceTable([0.0, 0.05, 0.1], [0.0, 1000.0, 3000.0]));
        var high = new TableSpring(spring.Table.Under(new Amount<Plain>(1.5)));
        Assert.Equal(1200.0, high.ForceAt(0.0, 1200.0), 1e-9);
        Assert.Equal(40000.0, spring.RateAtReference(1200.0), 1e-6);
        Assert.Equal(30000.0, high.RateAtReference(1200.0), 1e-6);
    }
}
