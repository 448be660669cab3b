using Heaveline.Studies;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// How a car moves in its picture, its left wheels in front: heights of the body over the left wheels, of the left wheels' centres and of the right
/// ones', from the state described, on a coarser clock than the record's.
/// </summary>
internal static class SceneMotion
{
    /// <summary>Numbers of one sample.</summary>
    public const int PerSample = 6;

    // Wheels bounce at about 10 Hz: a hundred pictures a second lose nothing that an eye could follow.
    private const double PerSecond = 100.0;

    /// <summary>Every how many samples of the record there is one here.</summary>
    public static int StrideOf(PassAnswer crossing) => Math.Max(1, (int)Math.Round(1.0 / (PerSecond * crossing.Pass.SampleStep)));

    /// <summary>Front body, rear body, front wheel, rear wheel, far front wheel, far rear wheel of each sample, m.</summary>
    public static float[] Of(PassAnswer crossing)
    {
        var (pass, trim) = (crossing.Pass, crossing.Model.Trim);
        var (front, rear, roll) = (pass.FrontHeight, pass.RearHeight, pass.Roll);
        var travel = Enumerable.Range(0, 4).Select(corner => pass.Travel(corner)).ToArray();
        var arm = Enumerable.Range(0, 4).Select(corner => Arm(crossing, corner)).ToArray();
        var stride = StrideOf(crossing);
        var count = (pass.Count + stride - 1) / stride;
        var numbers = new float[PerSample * count];
        for (var i = 0; i < count; i++)
        {
            var k = i * stride;
            var lean = trim.Roll + roll[k];
            double Body(int corner) => (corner < 2 ? trim.FrontHeight + front[k] : trim.RearHeight + rear[k]) + (arm[corner] * lean);
            var sample = numbers.AsSpan(PerSample * i, PerSample);
            sample[0] = (float)Body(0);
            sample[1] = (float)Body(2);
            foreach (var (place, corner) in new[] { (2, 0), (3, 2), (4, 1), (5, 3) })
            {
                sample[place] = (float)(Body(corner) + travel[corner][k]);
            }
        }

        return numbers;
    }

    // Left of the car's middle, where the heights over the axles are told.
    private static double Arm(PassAnswer crossing, int corner) =>
        crossing.Model.Rolls ? crossing.Model.Y[corner] + crossing.Model.Body.LeftOfMiddle : 0.0;
}
