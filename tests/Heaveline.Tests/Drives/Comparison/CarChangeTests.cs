using Heaveline.Drives.Comparison;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;
using Heaveline.Studies;

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

    /// <summary>
    /// A change of 1.3 half-widths of its own 90 % interval: Student's t with 11 degrees is 1.796 for one of 90 % and 2.998 for one of
    /// 1 − 0.1/8 (published tables: 2.718 at 98 %, 3.106 at 99 %).
    /// </summary>
    [Fact]
    public void Among_many_numbers_one_that_leaves_its_own_interval_by_a_little_is_not_told()
    {
        static CarFromDrive Of(double front, params CarNumber[] others) =>
            Car(12, [(CarNumber.FrontDamping, front, 0.03), .. others.Select(n => (n, 1.0, 0.03))]);
        CarNumber[] seven =
        [
            CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio, CarNumber.RearDamping, CarNumber.PitchIndex,
            CarNumber.FrontHop, CarNumber.RearHop,
        ];
        var by = Math.Exp(1.3 * 0.03 * Math.Sqrt(2.0));
        Assert.True(Assert.Single(CarChange.Of(Of(1.0), Of(by)).Numbers).IsTold);
        var among = CarChange.Of(Of(1.0, seven), Of(by, seven));
        Assert.Equal(8, among.Numbers.Length);
        Assert.DoesNotContain(among.Numbers, n => n.IsTold);
        Assert.True(among.Numbers.Single(n => n.Number == CarNumber.FrontDamping).Effect.Low > 0.0);
        Assert.Equal(
            "In the car that moves like the drives no number changed by more than chance among 8.",
            ChangeWords.Of(null, null, among, 0.9)[0].Text);
        var far = CarChange.Of(Of(1.0, seven), Of(Math.Exp(2.0 * 0.03 * Math.Sqrt(2.0)), seven));
        Assert.Equal(CarNumber.FrontDamping, Assert.Single(far.Numbers, n => n.IsTold).Number);
        Assert.EndsWith("; nothing else changed by more than chance among 8 numbers.", ChangeWords.Of(null, null, far, 0.9)[0].Text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Modes_of_the_body_whose_led_end_may_change_are_not_compared()
    {
        var car = Car(12, (CarNumber.FirstModeDamping, 0.3, 0.03), (CarNumber.SecondModeFrequency, 1.5, 0.03), (CarNumber.RearDamping, 0.3, 0.03));
        Assert.Equal(CarNumber.RearDamping, Assert.Single(CarChange.Of(car, car).Numbers).Number);
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
