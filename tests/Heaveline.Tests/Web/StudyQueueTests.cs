using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Tests.Web;

public class StudyQueueTests
{
    [Fact]
    public async Task One_computation_runs_at_a_time_and_what_finds_no_place_is_refused()
    {
        using var queue = new StudyQueue(mostWaiting: 1);
        using var go = new ManualResetEventSlim();
        var cancellation = TestContext.Current.CancellationToken;
        var began = new TaskCompletionSource();
        var first = Task.Run(() => queue.Run(() => { began.SetResult(); go.Wait(cancellation); return 1; }, cancellation), cancellation);
        await began.Task;
        var ran = false;
        var second = queue.Run(() => { ran = true; return 2; }, cancellation);
        Assert.False(second.IsCompleted);
        await Assert.ThrowsAsync<QueueFullException>(() => queue.Run(() => 3, cancellation));
        Assert.False(ran);
        go.Set();
        Assert.Equal((1, 2), (await first, await second));
    }

    [Fact]
    public async Task Whoever_stops_waiting_gives_the_place_back()
    {
        using var queue = new StudyQueue(mostWaiting: 1);
        using var go = new ManualResetEventSlim();
        using var impatient = new CancellationTokenSource();
        var cancellation = TestContext.Current.CancellationToken;
        var began = new TaskCompletionSource();
        var first = Task.Run(() => queue.Run(() => { began.SetResult(); go.Wait(cancellation); return 1; }, cancellation), cancellation);
        await began.Task;
        var second = queue.Run(() => 2, impatient.Token);
        await impatient.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => second);
        var third = queue.Run(() => 3, cancellation);
        go.Set();
        Assert.Equal((1, 3), (await first, await third));
    }

    // The best so far is no answer for whoever asks later.
    [Fact]
    public async Task What_was_stopped_is_shown_and_not_kept()
    {
        using var queue = new StudyQueue();
        using var stop = new CancellationTokenSource();
        var cancellation = TestContext.Current.CancellationToken;
        var times = 0;
        using var study = new PageStudy<ChooseAsked, ChooseAnswer, string>(
            (_, _) =>
            {
                if (times++ == 0)
                {
                    stop.Cancel();
                }

                return null!;
            },
            _ => times == 1 ? "the best so far" : "the whole",
            queue,
            4);
        var asked = new AskedReading<ChooseAsked> { Asked = Heaveline.Tests.Studies.VillageParts.Asked, Key = "k", Objections = [] };
        Assert.Equal("the best so far", await study.Answer(asked, null, null, stop.Token));
        Assert.Null(study.Find("k"));
        Assert.Equal("the whole", await study.Answer(asked, null, null, cancellation));
        Assert.Equal("the whole", study.Find("k"));
    }

    [Fact]
    public void The_answer_not_asked_for_longest_makes_room()
    {
        using var answers = new AnswerCache<string>(2);
        answers.Keep("a", "A");
        Thread.Sleep(20);
        answers.Keep("b", "B");
        Thread.Sleep(20);
        Assert.Equal("A", answers.Find("a"));
        Thread.Sleep(20);
        answers.Keep("c", "C");
        Assert.Equal(("A", null, "C", 2), (answers.Find("a"), answers.Find("b"), answers.Find("c"), answers.Count));
    }
}
