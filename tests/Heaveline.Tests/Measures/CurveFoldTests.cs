using CsCheck;
using Heaveline.Measures;
using Heaveline.Recording;

namespace Heaveline.Tests.Measures;

/// <summary>The folds that a page runs, worked out sample by sample, against the curve through the whole trace.</summary>
public class CurveFoldTests
{
    private static readonly Gen<double[]> Trace = Gen.OneOf(
        Gen.Double[-3.0, 3.0].Array[6, 60],
        // Corners, plateaus and crossings of nothing.
        Gen.Int[-2, 2].Select(k => 0.5 * k).Array[6, 60],
        Gen.Select(Gen.Double[0.05, 1.2], Gen.Double[0.0, 6.0], Gen.Int[6, 60]).Select(
            (turn, begin, n) => Enumerable.Range(0, n).Select(k => Math.Sin(begin + (turn * k))).ToArray()));

    [Fact]
    public void Squares_over_any_stretch_are_those_of_the_curve() => Gen.Select(Trace, Gen.Double[0.0, 1.0], Gen.Double[0.0, 1.0], Gen.Bool).Sample(
        (trace, one, two, isOnSample) =>
        {
            var (from, to) = Stretch(trace, one, two, isOnSample);
            var fold = RecordRun.Of(CurveFolds.Of(CurveQuestionKind.Squares), Given(trace, from, to), trace, trace, 0);
            var size = Math.Max(1e-3, trace.Max(v => v * v));
            Near(new Curve(0.0, 1.0, trace).Squares(from, to), fold[0].One, size);
            Near(new Curve(0.0, 1.0, trace).Squares(0.0, trace.Length - 1), fold[0].Other, size);
        },
        iter: 3000);

    [Fact]
    public void The_range_of_any_stretch_is_that_of_the_curve() => Gen.Select(Trace, Gen.Double[0.0, 1.0], Gen.Double[0.0, 1.0], Gen.Bool).Sample(
        (trace, one, two, isOnSample) =>
        {
            var (from, to) = Stretch(trace, one, two, isOnSample);
            var fold = RecordRun.Of(CurveFolds.Of(CurveQuestionKind.Range), Given(trace, from, to), trace, trace, 0);
            var (least, most) = new Curve(0.0, 1.0, trace).Range(from, to);
            Near(least, fold[0].One);
            Near(most, fold[1].One);
            // The other place of the pair asks of the whole record.
            (least, most) = new Curve(0.0, 1.0, trace).Range(0.0, trace.Length - 1);
            Near(least, fold[0].Other);
            Near(most, fold[1].Other);
        },
        iter: 3000);

    [Fact]
    public void The_farthest_change_and_the_samples_without_load_are_counted_from_the_first_sample_to_the_last() =>
        Gen.Select(Trace, Gen.Int[1, 4]).Sample(
            (trace, apart) =>
            {
                double[] other = [.. trace.Reverse()];
                var given = Given(trace, 0.0, 0.0);
                var far = RecordRun.Of(CurveFolds.Of(CurveQuestionKind.Farthest), given, trace, other, apart);
                var expected = Enumerable.Range(apart, trace.Length - apart).Max(k => Math.Abs(trace[k] - trace[k - apart]));
                Assert.Equal(expected, far[0].One);
                var nothing = RecordRun.Of(CurveFolds.Of(CurveQuestionKind.Nothing), given, trace, [.. other.Select(v => -v)], 0);
                Assert.Equal(trace.Count(v => v <= 0.0), nothing[0].One);
                Assert.Equal(trace.Count(v => v >= 0.0), nothing[0].Other);
            },
            iter: 500);

    [Fact]
    public void A_fold_is_a_small_module() => Assert.All(CurveFolds.Kinds, kind =>
    {
        var size = RecordModule.Of(CurveFolds.Of(kind)).Length;
        TestContext.Current.SendDiagnosticMessage($"{kind}: {size} B");
        Assert.InRange(size, 1, 2048);
    });

    private static (double From, double To) Stretch(double[] trace, double one, double two, bool isOnSample)
    {
        var (a, b) = ((trace.Length - 1) * one, (trace.Length - 1) * two);
        return isOnSample ? (Math.Round(a), Math.Round(b)) : (a, b);
    }

    // The other question is of the whole record.
    private static double[] Given(double[] trace, double from, double to)
    {
        var given = new double[LiveGiven.Car];
        given[LiveGiven.Last] = trace.Length - 1;
        double[] stretch = [from, 0.0, to, trace.Length - 1];
        stretch.CopyTo(given, LiveGiven.Stretch);
        return given;
    }

    private static void Near(double expected, double folded, double size = 1.0)
    {
        if (!double.IsFinite(expected))
        {
            Assert.Equal(expected, folded);
            return;
        }

        Assert.InRange(folded, expected - (1e-12 * size), expected + (1e-12 * size));
    }
}
