#pragma once

namespace loadwarden::demo {

/// As a recorder may write that nobody has confirmed yet.
inline constexpr char anotherRecorder[] = "SIMULATED, the record of no sterilizer;;;\n"
                                          "Recorder 7;cycle 1204;;\n"
                                          "\n"
                                          "Time;Chamber T [°C];Drain T [°C];P [bar]\n"
                                          "07:14:00;21,4;21,2;1,01\n"
                                          "07:14:10;24,9;23,0;0,72\n"
                                          "07:14:20;31,3;26,4;0,43\n"
                                          "07:14:30;38,8;30,9;0,21\n"
                                          "07:14:40;58,1;47,7;0,88\n"
                                          "07:14:50;97,6;90,2;1,62\n";

} // namespace loadwarden::demo
