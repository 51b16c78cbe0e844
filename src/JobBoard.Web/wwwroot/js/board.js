// Starts what every page has.
import * as live from "./live.js";
import * as forms from "./forms.js";
import * as alarm from "./alarm.js";
import * as clocks from "./clocks.js";

forms.start();
live.start();
alarm.start();
clocks.start();
