using Heaveline.Studies;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// How a car moves in its picture, seen from its left: heights of the body over the left wheels and of the left wheels' centres, from the state
/// described, on a coarser clock than the record's.
/// </summary>
internal static class SceneMotion
{
    /// <summary>Numbers of one sample.</summary>
    public const int PerSample = 4;

    // Wheels bounce at about 10 Hz: a hundred pictures a second lose nothing that an eye could follow.
    private const double PerSecond = 100.0;

    /// <summary>Every how many samples of the record there is one here.</summary>
    public static int StrideOf(PassAnswer crossing) => Math.Max(1, (int)Math.Round(1.0 / (PerSecond * crossing.Pass.SampleStep)));

    /// <summary>Front body, rear body, front wheel, rear wheel of each sample, m.</summary>
    public static float[] Of(PassAnswer crossing)
    {
        var (pass, trim) = (crossing.Pass, crossing.Model.Trim);
        var (front, rear, roll) = (pass.FrontHeight, pass.RearHeight, pass.Roll);
        var (frontTravel, rearTravel) = (pass.Travel(0), pass.Travel(2));
        var (frontArm, rearArm) = (Arm(crossing, 0), Arm(crossing, 2));
        var stride = StrideOf(crossing);
        var count = (pass.Count + stride - 1) / stride;
        var numbers = new float[PerSample * count];
        for (var i = 0; i < count; i++)
        {
            var k = i * stride;
            var lean = trim.Roll + roll[k];
            var frontBody = trim.FrontHeight + front[k] + (frontArm * lean);
            var rearBody = trim.RearHeight + rear[k] + (rearArm * lean);
            numbers[PerSample * i] = (float)frontBody;
            numbers[(PerSample * i) + 1] = (float)rearBody;
            numbers[(PerSample * i) + 2] = (float)(frontBody + frontTravel[k]);
            numbers[(PerSample * i) + 3] = (float)(rearBody + rearTravel[k]);
        }

        return numbers;
    }

    // Left of the car's middle, where the heights over the axles are told.
    private static double Arm(PassAnswer crossing, int corner) =>
        crossing.Model.Rolls ? crossing.Model.Y[corner] + crossing.Model.Body.LeftOfMiddle : 0.0;
}
