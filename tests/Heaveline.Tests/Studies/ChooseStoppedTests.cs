using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class ChooseStoppedTests
{
    // Soon after the search is through: every setup is driven then, and the draws have hardly begun.
    [Fact]
    public void A_choice_that_is_stopped_says_so_under_a_key_of_its_own_and_how_far_it_came()
    {
        using var stop = new CancellationTokenSource();
        var answer = ChooseStudy.Run(VillageParts.Asked, new StudyRun
        {
            Cancellation = stop.Token,
            Progress = new Told(share =>
            {
                if (share > 0.22)
                {
                    stop.Cancel();
                }
            }),
        });
        Assert.True(answer.Facts["stopped"]!.GetValue<bool>());
        Assert.True(answer.Facts["driven"]!.GetValue<int>() > 1);
        Assert.Equal(0, answer.Facts["draws"]!.GetValue<int>());
        Assert.NotNull(answer.Failure);
        Assert.StartsWith("So far, stopped before its end: ", answer.Finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_choice_that_runs_to_its_end_says_that_it_was_not_stopped()
    {
        var answer = ChooseStudy.Run(VillageParts.Asked with { Draws = 20 }, new StudyRun { Degree = 2 });
        Assert.False(answer.Facts["stopped"]!.GetValue<bool>());
        Assert.Null(answer.Failure);
    }

    private sealed class Told(Action<double> told) : IProgress<double>
    {
        public void Report(double value) => told(value);
    }
}
