using Heaveline.Web.Pages.Parts;

namespace Heaveline.Tests.Web;

public class ErrandTests
{
    [Fact]
    public async Task An_errand_tells_its_share_and_ends()
    {
        using var errand = new Errand(TimeProvider.System);
        var shares = new List<double>();
        errand.Moved += () => shares.Add(errand.Share);
        await errand.Run((progress, _) =>
        {
            progress.Report(0.5);
            Assert.True(errand.Running);
            return Task.CompletedTask;
        });
        Assert.Equal([0.5], shares);
        Assert.False(errand.Running);
        Assert.False(errand.Stopped);
    }

    [Fact]
    public async Task A_stopped_errand_says_that_it_was_stopped_and_throws_nothing()
    {
        using var errand = new Errand(TimeProvider.System);
        var begun = new TaskCompletionSource();
        var run = errand.Run((_, stop) =>
        {
            begun.SetResult();
            stop.WaitHandle.WaitOne();
            stop.ThrowIfCancellationRequested();
            return Task.CompletedTask;
        });
        await begun.Task;
        errand.Cancel();
        await run;
        Assert.True(errand.Stopped);
        Assert.False(errand.Running);
    }

    [Fact]
    public async Task A_second_errand_stops_the_first_and_is_not_taken_for_it()
    {
        using var errand = new Errand(TimeProvider.System);
        var begun = new TaskCompletionSource();
        var first = errand.Run((progress, stop) =>
        {
            begun.SetResult();
            stop.WaitHandle.WaitOne();
            progress.Report(0.9);
            stop.ThrowIfCancellationRequested();
            return Task.CompletedTask;
        });
        await begun.Task;
        var held = new TaskCompletionSource();
        var second = errand.Run(async (_, _) => await held.Task);
        await first;
        Assert.True(errand.Running);
        Assert.Equal(0.0, errand.Share);
        held.SetResult();
        await second;
        Assert.False(errand.Stopped);
    }

    [Fact]
    public async Task What_the_work_throws_comes_out()
    {
        using var errand = new Errand(TimeProvider.System);
        await Assert.ThrowsAsync<InvalidOperationException>(() => errand.Run((_, _) => throw new InvalidOperationException("no")));
        Assert.False(errand.Running);
    }

    [Fact]
    public void What_was_not_asked_for_longest_makes_room()
    {
        var kept = new Kept<string>(2);
        kept.Keep("a", "1");
        kept.Keep("b", "2");
        Assert.Equal("1", kept.Find("a"));
        kept.Keep("c", "3");
        Assert.Equal(2, kept.Count);
        Assert.Null(kept.Find("b"));
        Assert.Equal(("1", "3"), (kept.Find("a"), kept.Find("c")));
    }
}
