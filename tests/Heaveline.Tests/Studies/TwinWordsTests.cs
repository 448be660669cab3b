using Heaveline.Drives.Recovery;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>A factor of the twin affirms the file, leaves it open or contradicts it, as its interval does.</summary>
public class TwinWordsTests
{
    [Theory]
    [InlineData(TwinScale.FrontSpring, 0.99, 0.93, 1.05, "your front springs act as the file says (−7 to +5 %)")]
    [InlineData(TwinScale.RearDamper, 1.12, 0.87, 1.37, "your rear dampers may act as the file says: −13 to +37 %")]
    [InlineData(TwinScale.FrontDamper, 0.81, 0.65, 1.02, "your front dampers may act as the file says: −35 to +2 %")]
    [InlineData(TwinScale.FrontDamper, 0.81, 0.64, 0.98, "your front dampers act 19 % weaker than the file says (−36 to −2 %)")]
    [InlineData(TwinScale.RearSpring, 1.30, 1.01, 1.67, "your rear springs act 30 % stiffer than the file says (+1 to +67 %)")]
    [InlineData(TwinScale.RearSpring, 0.9986, 0.998, 0.999, "your rear springs act 0.1 % softer than the file says (−0.2 to −0.1 %)")]
    [InlineData(TwinScale.PitchInertia, 1.0, 0.98, 1.02, "pitch inertia is as the file says (−2 to +2 %)")]
    [InlineData(TwinScale.PitchInertia, 1.05, 0.93, 1.17, "pitch inertia may be as the file says: −7 to +17 %")]
    [InlineData(TwinScale.PitchInertia, 0.9, 0.88, 0.92, "pitch inertia is 10 % smaller than the file says (−12 to −8 %)")]
    public void A_factor_says_what_its_interval_says(TwinScale scale, double value, double low, double high, string says) =>
        Assert.Equal(says, DriveTwinWords.Said(new TwinFactor(scale, new Bracket(value, low, high), 0.9, "")));
}
