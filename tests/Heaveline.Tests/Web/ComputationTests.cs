using Heaveline.Web.Studying;

namespace Heaveline.Tests.Web;

public class ComputationTests
{
    [Fact]
    public async Task An_computation_tells_its_share_and_ends()
    {
        using var computation = new Computation(TimeProvider.System);
        var shares = new List<double>();
        computation.Moved += () => shares.Add(computation.Share);
        await computation.Run((progress, _) =>
        {
            progress.Report(0.5);
            Assert.True(computation.Running);
            return Task.CompletedTask;
        });
        Assert.Equal([0.5], shares);
        Assert.False(computation.Running);
        Assert.False(computation.Stopped);
    }

    [Fact]
    public async Task A_stopped_computation_says_that_it_was_stopped_and_throws_nothing()
    {
        using var computation = new Computation(TimeProvider.System);
        var begun = new TaskCompletionSource();
        var run = computation.Run((_, stop) =>
        {
            begun.SetResult();
            stop.WaitHandle.WaitOne();
            stop.ThrowIfCancellationRequested();
            return Task.CompletedTask;
        });
        await begun.Task;
        computation.Cancel();
        await run;
        Assert.True(computation.Stopped);
        Assert.False(computation.Running);
    }

    [Fact]
    public async Task A_second_computation_stops_the_first_and_is_not_taken_for_it()
    {
        using var computation = new Computation(TimeProvider.System);
        var begun = new TaskCompletionSource();
        var first = computation.Run((progress, stop) =>
        {
            begun.SetResult();
            stop.WaitHandle.WaitOne();
            progress.Report(0.9);
            stop.ThrowIfCancellationRequested();
            return Task.CompletedTask;
        });
        await begun.Task;
        var held = new TaskCompletionSource();
        var second = computation.Run(async (_, _) => await held.Task);
        await first;
        Assert.True(computation.Running);
        Assert.Equal(0.0, computation.Share);
        held.SetResult();
        await second;
        Assert.False(computation.Stopped);
    }

    [Fact]
    public async Task What_the_work_throws_comes_out()
    {
        using var computation = new Computation(TimeProvider.System);
        await Assert.ThrowsAsync<InvalidOperationException>(() => computation.Run((_, _) => throw new InvalidOperationException("no")));
        Assert.False(computation.Running);
    }
}
