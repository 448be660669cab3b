using Heaveline.Drives.Comparison;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;

namespace Heaveline.Tests.Drives.Comparison;

public class CarChangeTests
{
    /// <summary>Two half-widths of 3 % and 4 % in the logarithm from as many windows make one of 5 %.</summary>
    [Fact]
    public void Independent_intervals_add_by_their_squares()
    {
        var change = CarChange.Of(Car(12, (CarNumber.RearFrequency, 1.0, 0.03)), Car(12, (CarNumber.RearFrequency, 1.1, 0.04)));
        var rear = Assert.Single(change.Numbers);
        Assert.Equal(Math.Log(1.1), rear.Effect.Log, 1e-12);
        Assert.Equal(0.05, rear.Effect.HalfWidth, 1e-12);
        Assert.Equal(11, rear.Effect.Freedom);
        Assert.True(rear.IsTold);
    }

    /// <summary>From 4 windows and from 21 the errors are divided by their own t (3 and 20 degrees) and the larger t is taken.</summary>
    [Fact]
    public void The_larger_t_is_taken()
    {
        var change = CarChange.Of(Car(4, (CarNumber.FrontDamping, 0.3, 0.1)), Car(21, (CarNumber.FrontDamping, 0.3, 0.1)));
        var (first, second) = (LeastSquares.Student(3, 0.9), LeastSquares.Student(20, 0.9));
        Assert.Equal(
            first * Math.Sqrt(Math.Pow(0.1 / first, 2.0) + Math.Pow(0.1 / second, 2.0)), Assert.Single(change.Numbers).Effect.HalfWidth, 1e-12);
        Assert.False(change.Numbers[0].IsTold);
    }

    [Fact]
    public void A_car_that_is_not_believed_and_a_number_that_is_not_said_are_not_compared()
    {
        var car = Car(12, (CarNumber.RearFrequency, 1.0, 0.03), (CarNumber.PitchIndex, 0.9, 0.02));
        Assert.Empty(CarChange.Of(car with { IsBelieved = false }, car).Numbers);
        var silent = car with { Estimates = [car.Estimates[0], car.Estimates[1] with { IsSaid = false }] };
        Assert.Equal(CarNumber.RearFrequency, Assert.Single(CarChange.Of(car, silent).Numbers).Number);
    }

    private static CarFromDrive Car(int windows, params (CarNumber Number, double Value, double Half)[] numbers) => new()
    {
        IsBelieved = true,
        Windows = [.. new FittedWindow[windows]],
        Estimates =
        [
            .. numbers.Select(n => new CarEstimate
            {
                Number = n.Number,
                Value = n.Value,
                Low = n.Value * Math.Exp(-n.Half),
                High = n.Value * Math.Exp(n.Half),
                Learned = 0.9,
                IsSaid = true,
            }),
        ],
    };
}
