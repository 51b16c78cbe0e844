namespace JobBoard.Scheduling.Tests;

/// <summary>Published textbook networks; the source stands at each. Tolerance 0.</summary>
public class PublishedNetworkTests
{
    /// <summary>
    /// Hillier and Lieberman, Introduction to Operations Research, project-management chapter, "Reliable Construction Co.".
    /// Names and 13 of 14 durations read at solutioninn.com study question 14060241; H = 9 and the links from memory; the
    /// answer 44 is well known for this example, the table was recomputed.
    /// </summary>
    [Fact]
    public void Dates_of_the_construction_company()
    {
        var example = Example.Parse(
            "A2; B4<A; C10<B; D6<C; E4<C; F5<E; G7<D; H9<E,G; I7<C; J8<F,I; K4<J; L5<J; M2<H; N6<K,L");

        var dates = example.Dates();

        Assert.Equal(44, dates.End);
        Assert.Equal(
            "A 0-2/0-2/0/0; B 2-6/2-6/0/0; C 6-16/6-16/0/0; D 16-22/20-26/4/0; E 16-20/16-20/0/0; F 20-25/20-25/0/0; "
            + "G 22-29/26-33/4/0; H 29-38/33-42/4/0; I 16-23/18-25/2/2; J 25-33/25-33/0/0; K 33-37/34-38/1/1; "
            + "L 33-38/33-38/0/0; M 38-40/42-44/4/4; N 38-44/38-44/0/0",
            example.Table(dates));
        Assert.Equal("A-B-C-E-F-J-L-N", example.Critical(dates));
        Assert.Equal("A-B-C-E-F-J-L-N", example.Chain(dates));
    }

    /// <summary>B. W. Taylor, Introduction to Management Science, chapter 8 solutions, read at scribd.com/doc/47113515.</summary>
    [Fact]
    public void Dates_of_the_six_events()
    {
        var example = new Example();
        example.Add("1-2", 7);
        example.Add("1-3", 10);
        example.Add("2-4", 6, "1-2");
        example.Add("3-4", 5, "1-3");
        example.Add("3-5", 4, "1-3");
        example.Add("4-5", 3, "2-4", "3-4");
        example.Add("5-6", 2, "3-5", "4-5");

        var dates = example.Dates();

        Assert.Equal(20, dates.End);
        Assert.Equal(
            "1-2 0-7/2-9 1-3 0-10/0-10 2-4 7-13/9-15 3-4 10-15/10-15 3-5 10-14/14-18 4-5 15-18/15-18 5-6 18-20/18-20",
            example.EarlyAndLate(dates));
        Assert.Equal("1-22 1-30 2-42 3-40 3-54 4-50 5-60", example.TotalFloats(dates));
        Assert.Equal("1-3-3-4-4-5-5-6", example.Chain(dates));
    }

    /// <summary>
    /// C. Hendrickson, Project Management for Construction, chapter 10, nine-activity project, read at
    /// scribd.com/document/705201264; free floats computed from the read dates.
    /// </summary>
    [Fact]
    public void Dates_of_the_nine_activities()
    {
        var example = Example.Parse("A4; B3; C8<A; D7<A; E9<B,C; F12<B,C; G2<D,E; H5<D,E; I6<F,G");

        var dates = example.Dates();

        Assert.Equal(30, dates.End);
        Assert.Equal(
            "A 0-4/0-4/0/0; B 0-3/9-12/9/9; C 4-12/4-12/0/0; D 4-11/15-22/11/10; E 12-21/13-22/1/0; F 12-24/12-24/0/0; "
            + "G 21-23/22-24/1/1; H 21-26/25-30/4/4; I 24-30/24-30/0/0",
            example.Table(dates));
        Assert.Equal("A-C-F-I", example.Critical(dates));
        Assert.Equal("A-C-F-I", example.Chain(dates));
    }

    /// <summary>
    /// Anderson, Sweeney and Williams, Introduction to Management Science, "Porta-Vac": inputs read at
    /// writersdomain.org/2020/10/10/project-management-using-excel, dates worked out from them (17 weeks agrees from memory).
    /// </summary>
    [Fact]
    public void Dates_of_the_cordless_sweeper()
    {
        var example = Example.Parse("A6; B2; C3<A; D5<A; E3<A,B; F2<C; G3<D; H4<B,E; I2<H; J2<F,G,I");

        var dates = example.Dates();

        Assert.Equal(17, dates.End);
        Assert.Equal(
            "A 0-6/0-6 B 0-2/4-6 C 6-9/10-13 D 6-11/7-12 E 6-9/6-9 F 9-11/13-15 G 11-14/12-15 H 9-13/9-13 I 13-15/13-15 J 15-17/15-17",
            example.EarlyAndLate(dates));
        Assert.Equal("B4 C4 D1 F4 G1", example.Slack(dates));
        Assert.Equal("A-E-H-I-J", example.Critical(dates));
    }

    /// <summary>
    /// King Saud University lecture on resource allocation, node boxes read at scribd.com/presentation/803324316 (Topic 5);
    /// the list of links is reconstructed from the boxes.
    /// </summary>
    [Fact]
    public void Dates_of_the_resource_lecture()
    {
        var example = Example.Parse("A3; B5; C6<A; D2<A; E3<D; F3<D; G4<B; H5<G; I4<C; J2<I,E,F; K3<J");

        var dates = example.Dates();

        Assert.Equal(18, dates.End);
        Assert.Equal(
            "A 0-3/0-3 B 0-5/4-9 C 3-9/3-9 D 3-5/8-10 E 5-8/10-13 F 5-8/10-13 G 5-9/9-13 H 9-14/13-18 I 9-13/9-13 J 13-15/13-15 K 15-18/15-18",
            example.EarlyAndLate(dates));
        Assert.Equal("B4 D5 E5 F5 G4 H4", example.Slack(dates));
        Assert.Equal("A-C-I-J-K", example.Critical(dates));
    }

    /// <summary>
    /// Course page "Network Construction - Precedence Diagram Method" (2019) in the open web-text set Nemotron-CC-Math-v1:
    /// durations and links read there, answer computed.
    /// </summary>
    [Fact]
    public void Dates_of_the_precedence_course()
    {
        var example = Example.Parse(
            "A2; B10<A(SS); C13<A; D12<A; E12<B; F7<B; G10<D; H16<D; I6<F; J12<C,G(SS); K5<I(SS); L8<E,I,K; M5<H; N3<G,J,L,M");

        var dates = example.Dates();

        Assert.Equal(38, dates.End);
        Assert.Equal("A0 B0 C2 D2 E10 F10 G14 H14 I17 J15 K17 L23 M30 N35", example.EarlyStarts(dates));
        Assert.Equal("A0 B4 C8 D0 E5 F4 G9 H0 I4 J8 K5 L4 M0 N0", example.TotalFloats(dates));
        Assert.Equal("A-D-H-M-N", example.Critical(dates));
    }

    /// <summary>
    /// S. Mubarak, Construction Project Scheduling and Control, ladder example, read at what-when-how.com topic-10696e4sr.
    /// The finish-finish link governs C's start: 4, not 0. A's late dates, read in part, are 0-5 by its start-start link.
    /// </summary>
    [Fact]
    public void Dates_of_the_ladder()
    {
        var example = Example.Parse("A5; B7<A(SS0),A(FF0); C3<B(SS0),B(FF0)");

        var dates = example.Dates();

        Assert.Equal(7, dates.End);
        Assert.Equal("A 0-5/0-5 B 0-7/0-7 C 4-7/4-7", example.EarlyAndLate(dates));
    }

    /// <summary>
    /// US Navy, Builder/Seabee training manual NAVEDTRA 14233, figure 2-13, read at constructionmanuals.tpub.com/14233 pages
    /// 44-45. The figure is a fragment: the lengths of 1050, 1060 and 1070 are chosen so that the printed late dates come out.
    /// </summary>
    [Fact]
    public void Dates_of_the_training_manual()
    {
        var example = TrainingManual(late: 0);

        var dates = example.Dates();

        var early = example.Of(dates, "1020");
        Assert.Equal((3, 10, 5, 2, 1), (early.EarlyStart, early.EarlyFinish, early.LateStart, early.TotalFloat, early.FreeFloat));
        Assert.Equal((11, 11), (example.Of(dates, "1040").EarlyFinish, example.Of(dates, "1040").LateFinish));
        Assert.Equal((11, 12), (example.Of(dates, "1050").EarlyStart, example.Of(dates, "1050").LateStart));
        Assert.Equal("1010-1040-1060-1070-end", example.Critical(dates));
    }

    /// <summary>
    /// As above: late by a day nothing moves; by two 1050 starts on day 12 and its float falls by 1 to 0; by more the end moves.
    /// </summary>
    [Theory]
    [InlineData(1, 11, 1, 0)]
    [InlineData(2, 12, 0, 0)]
    [InlineData(3, 13, 0, 1)]
    public void Late_task_moves_what_comes_after(int late, int start, int slack, int endMovesBy)
    {
        var example = TrainingManual(late);

        var dates = example.Dates();

        Assert.Equal((start, slack), (example.Of(dates, "1050").EarlyStart, example.Of(dates, "1050").TotalFloat));
        Assert.Equal(17 + endMovesBy, dates.End);
    }

    /// <summary>All four kinds with lags; made for this check and computed by hand, not published.</summary>
    [Fact]
    public void Dates_of_all_four_kinds_with_lags()
    {
        var example = Example.Parse("A6; B8<A(SS+2); C5<B(FF+3); D4<C(FS+1); E3<B(SF+12); F2<D,E");

        var dates = example.Dates();

        Assert.Equal(20, dates.End);
        Assert.Equal("A 0-6 B 2-10 C 8-13 D 14-18 E 11-14 F 18-20", example.Early(dates));
        Assert.Equal((15L, 18L, 4L), (example.Of(dates, "E").LateStart!.Value, example.Of(dates, "E").LateFinish!.Value, example.Of(dates, "E").TotalFloat!.Value));
    }

    private static Example TrainingManual(int late)
    {
        var example = new Example();
        example.Add("1010", 3);
        example.Add("1020", 7 + late, "1010");
        example.Add("1040", 8, "1010");
        example.Add("1050", 5, "1020", "1040");
        example.Add("1060", 2, "1040");
        example.Add("1070", 1, "1060");
        example.Add("end", 0, "1050", "1070(FS+3)");
        return example;
    }
}
